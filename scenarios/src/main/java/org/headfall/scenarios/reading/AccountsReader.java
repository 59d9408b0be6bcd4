package org.headfall.scenarios.reading;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.VolumeUnit;
import org.headfall.scenarios.scenario.AccountsSpecification;
import org.headfall.scenarios.scenario.AccountsSpecification.MeterReading;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.table.TableColumn;
import org.headfall.scenarios.table.TableFormat;
import org.headfall.scenarios.table.TableReader;
import org.headfall.scenarios.table.TableRow;
import org.jspecify.annotations.Nullable;

/** Reads {@code accounts: {water_year: 1 July, meters: meters.csv}}. */
final class AccountsReader {
    /** A hundred years of monthly readings of a thousand bores. */
    private static final long MOST_READINGS = 1_200_000;

    /** Years before and after the period beyond which a date is a slip; common practice, no source. */
    private static final int YEARS_AWAY = 100;

    private static final TableFormat COLUMNS = TableFormat.of(
                    TableColumn.text("name"),
                    TableColumn.date("date"),
                    TableColumn.quantity("reading", Dimension.VOLUME, ValueRanges.VOLUME))
            .withMostRows(MOST_READINGS);

    private final Inputs inputs;
    private final NameRegister names;
    private final KnownBores known;
    private final @Nullable Period period;

    AccountsReader(Inputs inputs, NameRegister names, KnownBores known, @Nullable Period period) {
        this.inputs = inputs;
        this.names = names;
        this.known = known;
        this.period = period;
    }

    Optional<AccountsSpecification> read(Section document) {
        @Nullable Section section = document.optionalSection("accounts");
        if (section == null) {
            return Optional.empty();
        }
        @Nullable String text = section.text("water_year");
        Optional<MonthDay> begins = text == null
                ? Optional.empty()
                : SeasonWords.day(text, section.placeOf("water_year"), section.nameOf("water_year"), inputs.problems());
        Inputs.@Nullable TableFile meters = section.has("meters") ? inputs.table(section, "meters") : null;
        section.done();
        List<MeterReading> readings = meters == null ? List.of() : readings(meters);
        // a water year that cannot be read counts as one, so that limits of volume do not miss it too
        return Optional.of(new AccountsSpecification(begins.orElse(MonthDay.of(1, 1)), readings));
    }

    private List<MeterReading> readings(Inputs.TableFile file) {
        List<MeterReading> readings = new ArrayList<>();
        Map<String, MeterReading> latest = new HashMap<>();
        new TableReader(COLUMNS, inputs.problems()).read(file.path(), file.name(), row -> {
            requireKnown(row);
            MeterReading reading = new MeterReading(row.text("name"), row.date("date"), row.value("reading"));
            requireNearThePeriod(row);
            @Nullable MeterReading before = latest.put(reading.bore(), reading);
            if (before != null) {
                requireOrder(row, before, reading);
            }
            readings.add(reading);
        });
        return readings;
    }

    private void requireKnown(TableRow row) {
        String name = row.text("name");
        if (known.complete() && !names.names().contains(name)) {
            Finding finding = new Finding(
                    ProblemKind.UNKNOWN_NAME, name, "the name of a bore", NearestSpelling.of(name, names.names()));
            inputs.problems().add(row.place("name"), "name", finding);
        }
    }

    /** Meters count long before a run; a reading of another century has a digit that is wrong. */
    private void requireNearThePeriod(TableRow row) {
        LocalDate date = row.date("date");
        if (period == null) {
            return;
        }
        LocalDate first = period.from().minusYears(YEARS_AWAY);
        LocalDate last = period.until().plusYears(YEARS_AWAY);
        if (date.isBefore(first) || date.isAfter(last)) {
            inputs.problems()
                    .add(
                            row.place("date"),
                            "date",
                            Finding.of(
                                    ProblemKind.OUT_OF_RANGE,
                                    date.toString(),
                                    "dates from " + first + " to " + last + ", " + YEARS_AWAY
                                            + " years before and after the period"));
        }
    }

    private static String megalitres(MeterReading reading) {
        return BigDecimal.valueOf(VolumeUnit.MEGALITRES.of(reading.volume()))
                        .stripTrailingZeros()
                        .toPlainString()
                + " ML";
    }

    private void requireOrder(TableRow row, MeterReading before, MeterReading reading) {
        LocalDate date = reading.date();
        if (!date.isAfter(before.date())) {
            inputs.problems()
                    .add(
                            row.place("date"),
                            "meter of " + reading.bore(),
                            Finding.of(
                                    ProblemKind.DATE_ORDER,
                                    date + " after " + before.date(),
                                    "each reading of a bore later than the one before"));
        } else if (reading.volume() < before.volume()) {
            inputs.problems()
                    .add(
                            row.place("reading"),
                            "meter of " + reading.bore(),
                            Finding.of(
                                    ProblemKind.OUT_OF_RANGE,
                                    megalitres(reading) + " after " + megalitres(before),
                                    "all that has ever passed the meter, which does not fall; of a new meter add what"
                                            + " the old one showed"));
        }
    }
}
