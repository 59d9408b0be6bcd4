package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.interpolation.ScatteredValues;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.SpatialFile;
import org.headfall.scenarios.scenario.Spread;
import org.headfall.scenarios.scenario.VariogramSpecification;
import org.headfall.scenarios.spatial.Extent;
import org.headfall.scenarios.spatial.Position;
import org.headfall.scenarios.table.TableColumn;
import org.headfall.scenarios.table.TableFormat;
import org.headfall.scenarios.table.TableReader;
import org.headfall.scenarios.table.TableRow;
import org.headfall.solver.wording.PlainNumber;
import org.jspecify.annotations.Nullable;

/**
 * Reads {@code {points: tests.csv, column: T, spread: log-kriging}}, with kriging perhaps
 * {@code variogram: {range: 30 km, nugget_share: 10 %}}.
 */
final class PointFieldReader {
    static final Map<String, Spread> SPREADS = spreads();

    private static final Set<Spread> LOGARITHMIC = EnumSet.of(Spread.LOG_KRIGING, Spread.LOG_INVERSE_DISTANCE);
    private static final Set<Spread> KRIGED = EnumSet.of(Spread.LOG_KRIGING, Spread.KRIGING);
    private static final AllowedRange NUGGET_SHARE = new AllowedRange(0, true, 0.99, true);

    private final Inputs inputs;
    private final MapArea area;

    PointFieldReader(Inputs inputs, MapArea area) {
        this.inputs = inputs;
        this.area = area;
    }

    private static Map<String, Spread> spreads() {
        Map<String, Spread> spreads = new LinkedHashMap<>();
        spreads.put("nearest", Spread.NEAREST);
        spreads.put("inverse-distance", Spread.INVERSE_DISTANCE);
        spreads.put("log-inverse-distance", Spread.LOG_INVERSE_DISTANCE);
        spreads.put("kriging", Spread.KRIGING);
        spreads.put("log-kriging", Spread.LOG_KRIGING);
        return spreads;
    }

    @Nullable
    Field read(Section section, Dimension dimension, AllowedRange range) {
        @Nullable SpatialFile file = inputs.spatialFile(section, "points");
        @Nullable String column = section.text("column");
        @Nullable Spread spread = section.choice("spread", SPREADS);
        @Nullable VariogramSpecification variogram = variogram(section, spread);
        if (spread == Spread.KRIGING && range.low() >= 0) {
            section.refuse(
                    "spread",
                    Finding.of(
                            ProblemKind.OUT_OF_RANGE,
                            "kriging, which can give values below zero here",
                            "log-kriging, log-inverse-distance, inverse-distance or nearest"));
        }
        if (file == null || column == null) {
            return null;
        }
        List<Field.PointValue> points = points(file, column, dimension, range);
        if (spread != null && LOGARITHMIC.contains(spread)) {
            checkPositive(section, points);
        }
        return points.isEmpty() || spread == null || variogram == null
                ? null
                : new Field.FromPoints(file, points, spread, variogram);
    }

    private @Nullable VariogramSpecification variogram(Section outer, @Nullable Spread spread) {
        @Nullable Section section = outer.optionalSection("variogram");
        if (section == null) {
            return outer.has("variogram") ? null : VariogramSpecification.FITTED;
        }
        if (spread != null && !KRIGED.contains(spread)) {
            outer.refuse(
                    "variogram",
                    Finding.of(ProblemKind.CONFLICTING_KEYS, "a variogram", "a variogram only with kriging"));
        }
        boolean hasRange = section.has("range");
        boolean hasNugget = section.has("nugget_share");
        @Nullable Quantity range = section.optionalQuantity("range", Dimension.LENGTH, ValueRanges.VARIOGRAM_RANGE);
        @Nullable Quantity nugget = section.optionalQuantity("nugget_share", Dimension.NUMBER, NUGGET_SHARE);
        section.done();
        if (!hasRange && !hasNugget) {
            outer.refuse(
                    "variogram", Finding.of(ProblemKind.MISSING_KEY, "neither of them", "range, nugget_share or both"));
        }
        if ((hasRange && range == null) || (hasNugget && nugget == null)) {
            return null;
        }
        return new VariogramSpecification(
                range == null ? OptionalDouble.empty() : OptionalDouble.of(range.value()),
                nugget == null ? 0 : nugget.value());
    }

    private static void checkPositive(Section section, List<Field.PointValue> points) {
        double least =
                points.stream().mapToDouble(Field.PointValue::value).min().orElse(1);
        if (!(least > 0)) {
            section.refuse(
                    "spread",
                    Finding.of(ProblemKind.OUT_OF_RANGE, "a value of " + least, "positive values for logarithms"));
        }
    }

    /** The points of a table; those that are wrong are reported and left out. */
    List<Field.PointValue> points(SpatialFile file, String column, Dimension dimension, AllowedRange range) {
        return new Rows(file, column).read(dimension, range);
    }

    /** The rows of one table of points. */
    private final class Rows {
        private final SpatialFile file;
        private final String column;
        private final String name;
        private final List<Field.PointValue> points = new ArrayList<>();
        private final Map<Position, Place> places = new HashMap<>();

        Rows(SpatialFile file, String column) {
            this.file = file;
            this.column = column;
            name = TableColumn.plain(column);
        }

        List<Field.PointValue> read(Dimension dimension, AllowedRange range) {
            TableFormat format = TableFormat.of(
                            TableColumn.quantity("x", Dimension.LENGTH, ValueRanges.POSITION),
                            TableColumn.quantity("y", Dimension.LENGTH, ValueRanges.POSITION),
                            TableColumn.quantity(column, dimension, range))
                    .withOtherColumns()
                    .withMostRows(ScatteredValues.MOST_POINTS);
            new TableReader(format, inputs.problems()).read(file.path(), file.name(), this::add);
            return points;
        }

        private void add(TableRow row) {
            Position position = new Position(row.value("x"), row.value("y"));
            Place place = row.place("x");
            @Nullable Place first = places.putIfAbsent(position, place);
            if (first != null) {
                String found = "x " + PlainNumber.of(position.x()) + " m, y " + PlainNumber.of(position.y())
                        + " m, first at " + first;
                report(place, ProblemKind.SAME_PLACE, found, "each place once; average tests of one bore first");
            }
            checkCoordinates(position, place);
            points.add(new Field.PointValue(position, row.value(name)));
        }

        /** Points may lie beyond the grid, but not as degrees or swapped coordinates do. */
        private void checkCoordinates(Position position, Place place) {
            @Nullable Extent grid = area.grid();
            if (grid == null || grid.contains(position.x(), position.y())) {
                return;
            }
            boolean degrees = Math.abs(position.x()) <= 360 && Math.abs(position.y()) <= 360;
            boolean swapped = grid.contains(position.y(), position.x());
            if (swapped || (degrees && !grid.fitsLongitudeLatitude())) {
                String found = "x " + PlainNumber.of(position.x()) + " m, y " + PlainNumber.of(position.y())
                        + " m, which seem to be " + (swapped ? "swapped" : "degrees");
                report(place, ProblemKind.COORDINATE_SYSTEM, found, "metres, easting first, near " + grid);
            }
        }

        private void report(Place place, ProblemKind kind, String found, String allowed) {
            inputs.problems().add(place, "point", Finding.of(kind, found, allowed));
        }
    }
}
