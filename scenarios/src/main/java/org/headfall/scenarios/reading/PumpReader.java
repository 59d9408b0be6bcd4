package org.headfall.scenarios.reading;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.BoreCompletion.PipeSpecification;
import org.headfall.scenarios.scenario.BoreOperation;
import org.headfall.scenarios.table.TableColumn;
import org.headfall.scenarios.table.TableFormat;
import org.headfall.scenarios.table.TableReader;
import org.headfall.scenarios.table.TableRow;
import org.headfall.solver.bore.PumpCurve;
import org.jspecify.annotations.Nullable;

/** Reads a pump with its curve: points of flow and head in the document, or a table with the columns flow and head. */
final class PumpReader {
    private static final TableFormat CURVE = TableFormat.of(
                    TableColumn.quantity("flow", Dimension.RATE, AllowedRange.NOT_NEGATIVE),
                    TableColumn.quantity("head", Dimension.LENGTH, ValueRanges.PUMP_HEAD))
            .withOtherColumns();

    private final Inputs inputs;
    /** Curves that tables of bores name, read once; those with problems are empty. */
    private final Map<Path, List<PlacedPoint>> soundTables = new HashMap<>();

    PumpReader(Inputs inputs) {
        this.inputs = inputs;
    }

    /** A point of a curve and where it is given. */
    private record PlacedPoint(double flow, double head, String flowText, String headText, Place place) {}

    /** The pump of a key, or null after a problem has been reported. */
    @Nullable
    BoreOperation read(Section outer, String key) {
        @Nullable Section section = outer.section(key);
        if (section == null) {
            return null;
        }
        List<PlacedPoint> points = points(section);
        @Nullable Quantity level = section.quantity("delivery_level", Dimension.LEVEL, ValueRanges.LEVEL);
        @Nullable Quantity head = section.optionalQuantity("delivery_head", Dimension.LENGTH, ValueRanges.PUMP_HEAD);
        @Nullable PipeSpecification riser = CompletionReader.pipe(section, "riser");
        section.done();
        if (level == null || !sound(points, section.placeOf("curve"), section.nameOf("curve"))) {
            return null;
        }
        return pump(points, level.value(), head == null ? 0 : head.value(), Optional.ofNullable(riser));
    }

    private static BoreOperation pump(
            List<PlacedPoint> points, double level, double head, Optional<PipeSpecification> riser) {
        return new BoreOperation.PumpedByCurve(
                points.stream().map(PlacedPoint::flow).toList(),
                points.stream().map(PlacedPoint::head).toList(),
                level,
                head,
                riser);
    }

    /** The pump of a row of a table of bores whose column {@code pump_curve} is filled, or null after a problem. */
    @Nullable
    BoreOperation read(TableRow row, Optional<PipeSpecification> riser) {
        Place place = row.place("pump_curve");
        Inputs.@Nullable TableFile file = inputs.table(row.text("pump_curve"), place, "pump_curve");
        List<PlacedPoint> points = file == null ? List.of() : soundTable(file, place);
        if (!row.has("delivery_level")) {
            String found = "pump_curve without delivery_level";
            String allowed = "delivery_level, to which the water is lifted";
            inputs.problems()
                    .add(place, "bore " + row.text("name"), Finding.of(ProblemKind.MISSING_KEY, found, allowed));
            return null;
        }
        return points.isEmpty()
                ? null
                : pump(points, row.value("delivery_level"), row.valueOr("delivery_head", 0), riser);
    }

    /** The points; none after a problem has been reported. */
    private List<PlacedPoint> points(Section section) {
        @Nullable DocumentNode node = section.node("curve");
        if (node == null) {
            return List.of();
        }
        if (node instanceof DocumentNode.Listing listing) {
            return listed(section, listing);
        }
        Inputs.@Nullable TableFile file = inputs.table(section, "curve");
        return file == null ? List.of() : tabled(file);
    }

    private List<PlacedPoint> soundTable(Inputs.TableFile file, Place place) {
        if (!soundTables.containsKey(file.path())) {
            List<PlacedPoint> points = tabled(file);
            soundTables.put(file.path(), sound(points, place, "pump_curve") ? points : List.of());
        }
        return soundTables.getOrDefault(file.path(), List.of());
    }

    private List<PlacedPoint> tabled(Inputs.TableFile file) {
        List<PlacedPoint> points = new ArrayList<>();
        long before = inputs.problems().count();
        new TableReader(CURVE, inputs.problems())
                .read(
                        file.path(),
                        file.name(),
                        row -> points.add(new PlacedPoint(
                                row.value("flow"),
                                row.value("head"),
                                row.shown("flow"),
                                row.shown("head"),
                                row.place("head"))));
        return inputs.problems().count() > before ? List.of() : points;
    }

    private static List<PlacedPoint> listed(Section section, DocumentNode.Listing listing) {
        List<PlacedPoint> points = new ArrayList<>();
        String name = section.nameOf("curve");
        long before = section.values().problems().count();
        for (DocumentNode node : listing.entries()) {
            if (!(node instanceof DocumentNode.Listing pair) || pair.entries().size() != 2) {
                section.values()
                        .refuse(
                                node,
                                name,
                                Finding.of(
                                        ProblemKind.WRONG_TYPE, node.shown(), "flow and head, such as [10 L/s, 82 m]"));
                continue;
            }
            @Nullable
            Quantity flow =
                    section.values().quantity(pair.entries().get(0), name, Dimension.RATE, AllowedRange.NOT_NEGATIVE);
            @Nullable
            Quantity head =
                    section.values().quantity(pair.entries().get(1), name, Dimension.LENGTH, ValueRanges.PUMP_HEAD);
            if (flow != null && head != null) {
                points.add(new PlacedPoint(
                        flow.value(),
                        head.value(),
                        flow.text(),
                        head.text(),
                        pair.entries().get(1).place()));
            }
        }
        if (section.values().problems().count() > before) {
            return List.of();
        }
        if (points.isEmpty()) {
            section.refuse("curve", tooFew(points));
        }
        return points;
    }

    private boolean sound(List<PlacedPoint> points, Place place, String name) {
        if (points.isEmpty()) {
            return false;
        }
        long before = inputs.problems().count();
        if (points.size() < PumpCurve.FEWEST_POINTS) {
            inputs.problems().add(place, name, tooFew(points));
        }
        if (points.get(0).flow() != 0) {
            refuse(points.get(0), name, points.get(0).flowText() + " in point 1", "a first point at no flow");
        }
        for (int i = 1; i < points.size(); i++) {
            PlacedPoint last = points.get(i - 1);
            PlacedPoint next = points.get(i);
            if (next.flow() <= last.flow()) {
                String found = next.flowText() + " after " + last.flowText() + " in point " + (i + 1);
                refuse(next, name, found, "flows that increase from point to point");
            }
            if (next.head() > last.head()) {
                String found = next.headText() + " after " + last.headText() + " in point " + (i + 1);
                refuse(next, name, found, "a curve that does not rise");
            }
        }
        return inputs.problems().count() == before;
    }

    private void refuse(PlacedPoint point, String name, String found, String allowed) {
        inputs.problems().add(point.place(), name, Finding.of(ProblemKind.OUT_OF_RANGE, found, allowed));
    }

    private static Finding tooFew(List<PlacedPoint> points) {
        return Finding.of(
                points.isEmpty() ? ProblemKind.NO_ROWS : ProblemKind.TOO_FEW_ROWS,
                points.size() + (points.size() == 1 ? " point" : " points"),
                "at least " + PumpCurve.FEWEST_POINTS + " points of flow and head");
    }
}
