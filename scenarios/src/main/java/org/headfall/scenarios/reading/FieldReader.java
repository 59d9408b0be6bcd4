package org.headfall.scenarios.reading;

import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.SpatialFile;
import org.jspecify.annotations.Nullable;

/**
 * Reads a quantity that may differ from place to place: {@code 350 m2/d}, {@code {raster: top.asc, unit: m}},
 * {@code {polygons: zones.geojson, property: T, unit: m2/d, elsewhere: 100 m2/d}},
 * {@code {points: tests.csv, column: T, spread: log-kriging}} or {@code {random: {...}}}.
 */
final class FieldReader {
    private final Inputs inputs;
    private final MapArea area;

    FieldReader(Inputs inputs, MapArea area) {
        this.inputs = inputs;
        this.area = area;
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
        // Lognormal values are positive: where others may stand, there are no random fields.
        String[] sources = range.low() >= 0
                ? new String[] {"raster", "polygons", "points", "random"}
                : new String[] {"raster", "polygons", "points"};
        @Nullable String source = inputs.onlyOneOf(section, outer.nameOf(key), sources);
        @Nullable Field field = source == null ? null : read(section, source, dimension, range);
        if (source != null) {
            section.done();
        }
        return field;
    }

    private @Nullable Field read(Section section, String source, Dimension dimension, AllowedRange range) {
        return switch (source) {
            case "raster" -> raster(section, dimension, range);
            case "random" -> new RandomFieldReader(inputs, area).read(section, dimension, range);
            case "polygons" -> new PolygonFieldReader(inputs, area).read(section, dimension, range);
            default -> new PointFieldReader(inputs, area).read(section, dimension, range);
        };
    }

    private @Nullable Field raster(Section section, Dimension dimension, AllowedRange range) {
        @Nullable SpatialFile file = inputs.spatialFile(section, "raster");
        if (file == null) {
            section.has("unit");
            section.has("layer");
            return null;
        }
        return new RasterFieldReader(inputs, area).read(section, file, dimension, range);
    }
}
