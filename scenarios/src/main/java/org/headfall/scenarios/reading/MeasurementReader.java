package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.scenario.MeasurementSpecification;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.table.TableColumn;
import org.headfall.scenarios.table.TableFormat;
import org.headfall.scenarios.table.TableReader;
import org.headfall.scenarios.table.TableRow;
import org.jspecify.annotations.Nullable;

/** Reads measured heads from a table: levels, or readings of a gauge with the level at which it stands. */
final class MeasurementReader {
    private static final TableFormat MEASUREMENTS = TableFormat.of(
                    TableColumn.text("name"),
                    TableColumn.date("date"),
                    TableColumn.quantity("head", Dimension.LEVEL, ValueRanges.LEVEL)
                            .orNone(),
                    TableColumn.quantity("gauge", Dimension.PRESSURE, ValueRanges.GAUGE_PRESSURE)
                            .orNone(),
                    TableColumn.quantity("gauge_level", Dimension.LEVEL, ValueRanges.LEVEL)
                            .orNone(),
                    TableColumn.text("remark").orNone())
            .withMostRows(1_000_000);

    private final Inputs inputs;
    private final NameRegister names;
    private final KnownBores known;
    private final @Nullable Period period;

    MeasurementReader(Inputs inputs, NameRegister names, KnownBores known, @Nullable Period period) {
        this.inputs = inputs;
        this.names = names;
        this.known = known;
        this.period = period;
    }

    /**
     * Measurements in the order of the table; those before or after the period are left out, they compare to nothing, and a
     * notice says so.
     */
    List<MeasurementSpecification> read(Section document) {
        List<MeasurementSpecification> measurements = new ArrayList<>();
        @Nullable Section section = document.optionalSection("measurements");
        if (section == null) {
            return measurements;
        }
        Inputs.@Nullable TableFile file = inputs.table(section, "file");
        section.done();
        if (file != null) {
            Map<String, Place> first = new HashMap<>();
            List<Place> outside = new ArrayList<>();
            new TableReader(MEASUREMENTS, inputs.problems()).read(file.path(), file.name(), row -> {
                MeasurementSpecification.@Nullable Reading reading = reading(row);
                requireKnown(row);
                requireOneADay(row, first);
                if (reading != null && !isInPeriod(row)) {
                    outside.add(row.place("date"));
                } else if (reading != null) {
                    measurements.add(new MeasurementSpecification(
                            row.text("name"), row.date("date"), reading, row.place("name")));
                }
            });
            if (!outside.isEmpty() && period != null) {
                inputs.problems()
                        .notice(
                                outside.get(0),
                                "heads measured before " + period.from() + " or after " + period.until()
                                        + " are compared with nothing: " + outside.size() + " of "
                                        + (outside.size() + measurements.size()));
            }
        }
        return measurements;
    }

    /** Two heads at one place and date leave it open which is meant. */
    private void requireOneADay(TableRow row, Map<String, Place> first) {
        String placeAndDate = row.text("name") + " on " + row.date("date");
        @Nullable Place before = first.putIfAbsent(placeAndDate, row.place("date"));
        if (before != null) {
            inputs.problems()
                    .add(
                            row.place("date"),
                            "head of " + row.text("name"),
                            Finding.of(
                                    ProblemKind.DUPLICATE_NAME,
                                    row.date("date") + ", first at " + before,
                                    "one head a place and date"));
        }
    }

    private void requireKnown(TableRow row) {
        String name = row.text("name");
        if (known.complete() && !names.names().contains(name)) {
            Finding finding = new Finding(
                    ProblemKind.UNKNOWN_NAME,
                    name,
                    "the name of a bore, spring or protected point",
                    NearestSpelling.of(name, names.names()));
            inputs.problems().add(row.place("name"), "name", finding);
        }
    }

    private boolean isInPeriod(TableRow row) {
        return period != null
                && !row.date("date").isBefore(period.from())
                && !row.date("date").isAfter(period.until());
    }

    private MeasurementSpecification.@Nullable Reading reading(TableRow row) {
        boolean gauge = row.has("gauge") && row.has("gauge_level") && !row.has("head");
        if (gauge) {
            return new MeasurementSpecification.Gauge(row.value("gauge"), row.value("gauge_level"));
        }
        if (row.has("head") && !row.has("gauge") && !row.has("gauge_level")) {
            return new MeasurementSpecification.Head(row.value("head"));
        }
        List<String> filled = new ArrayList<>(List.of("head", "gauge", "gauge_level"));
        filled.removeIf(column -> !row.has(column));
        inputs.problems()
                .add(
                        row.place(filled.isEmpty() ? "name" : filled.get(0)),
                        "reading of " + row.text("name"),
                        Finding.of(
                                filled.isEmpty() ? ProblemKind.MISSING_KEY : ProblemKind.CONFLICTING_KEYS,
                                filled.isEmpty() ? "none of them" : String.join(" and ", filled),
                                "head, or both gauge and gauge_level"));
        return null;
    }
}
