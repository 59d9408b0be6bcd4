package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.quantity.QuantityException;
import org.headfall.scenarios.quantity.Unit;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.Position;
import org.headfall.scenarios.scenario.SpatialFile;
import org.headfall.scenarios.scenario.Spread;
import org.headfall.scenarios.table.TableColumn;
import org.headfall.scenarios.table.TableFormat;
import org.headfall.scenarios.table.TableReader;
import org.jspecify.annotations.Nullable;

/**
 * Reads a quantity that may differ from place to place: {@code 350 m2/d}, {@code {raster: top.asc, unit: m}},
 * {@code {polygons: zones.geojson, property: T, unit: m2/d, elsewhere: 100 m2/d}} or
 * {@code {points: tests.csv, column: T, spread: log-kriging}}.
 */
final class FieldReader {
    static final Map<String, Spread> SPREADS = spreads();

    private final Inputs inputs;
    private final MapArea area;

    FieldReader(Inputs inputs, MapArea area) {
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
    Field required(Section outer, String key, Dimension dimension, AllowedRange range) {
        @Nullable DocumentNode node = outer.node(key);
        return node == null ? null : read(outer, key, node, dimension, range);
    }

    private @Nullable Field read(
            Section outer, String key, DocumentNode node, Dimension dimension, AllowedRange range) {
        if (!(node instanceof DocumentNode.Mapping)) {
            @Nullable Quantity quantity = outer.quantity(key, dimension, range);
            return quantity == null ? null : new Field.Constant(quantity.value());
        }
        @Nullable Section section = outer.section(key);
        if (section == null) {
            return null;
        }
        @Nullable String source = inputs.onlyOneOf(section, outer.nameOf(key), "raster", "polygons", "points");
        @Nullable Field field = source == null ? null : read(section, source, dimension, range);
        if (source != null) {
            section.done();
        }
        return field;
    }

    private @Nullable Field read(Section section, String source, Dimension dimension, AllowedRange range) {
        return switch (source) {
            case "raster" -> raster(section, dimension, range);
            case "polygons" -> polygons(section, dimension, range);
            default -> points(section, dimension, range);
        };
    }

    private @Nullable Field raster(Section section, Dimension dimension, AllowedRange range) {
        @Nullable SpatialFile file = inputs.spatialFile(section, "raster");
        if (file == null) {
            section.has("unit");
            section.has("layer");
            return null;
        }
        return new RasterFieldReader(inputs.problems(), area).read(section, file, dimension, range);
    }

    private @Nullable Field polygons(Section section, Dimension dimension, AllowedRange range) {
        @Nullable SpatialFile file = inputs.spatialFile(section, "polygons");
        @Nullable String property = section.text("property");
        double factor = factor(section, dimension);
        @Nullable Quantity elsewhere = section.optionalQuantity("elsewhere", dimension, range);
        if (file == null || property == null || Double.isNaN(factor)) {
            return null;
        }
        return new Field.FromPolygons(
                file,
                property,
                factor,
                elsewhere == null ? OptionalDouble.empty() : OptionalDouble.of(elsewhere.value()));
    }

    /** The unit of numbers in a map file, which cannot hold one; metres for lengths and levels unless said otherwise. */
    private double factor(Section section, Dimension dimension) {
        boolean plain = dimension.isPureNumber() || dimension.unit().equals("m");
        if (plain && !section.has("unit")) {
            return 1;
        }
        @Nullable String unit = section.text("unit");
        if (unit == null) {
            return Double.NaN;
        }
        try {
            return Unit.parse(unit, dimension).toMetresAndDays();
        } catch (QuantityException wrong) {
            section.refuse("unit", wrong.finding());
            return Double.NaN;
        }
    }

    private @Nullable Field points(Section section, Dimension dimension, AllowedRange range) {
        Inputs.@Nullable TableFile file = inputs.table(section, "points");
        @Nullable String column = section.text("column");
        @Nullable Spread spread = section.choice("spread", SPREADS);
        if (file == null || column == null) {
            return null;
        }
        List<Field.PointValue> points = read(file, column, dimension, range);
        if (spread == Spread.LOG_KRIGING || spread == Spread.LOG_INVERSE_DISTANCE) {
            checkPositive(section, points);
        }
        return points.isEmpty() || spread == null ? null : new Field.FromPoints(points, spread);
    }

    private List<Field.PointValue> read(Inputs.TableFile file, String column, Dimension dimension, AllowedRange range) {
        String name = TableColumn.plain(column);
        TableFormat format = TableFormat.of(
                        TableColumn.quantity("x", Dimension.LENGTH, ValueRanges.POSITION),
                        TableColumn.quantity("y", Dimension.LENGTH, ValueRanges.POSITION),
                        TableColumn.quantity(name, dimension, range))
                .withOtherColumns();
        List<Field.PointValue> points = new ArrayList<>();
        new TableReader(format, inputs.problems())
                .read(
                        file.path(),
                        file.name(),
                        row -> points.add(
                                new Field.PointValue(new Position(row.value("x"), row.value("y")), row.value(name))));
        return points;
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
}
