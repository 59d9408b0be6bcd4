package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.SpatialFile;
import org.headfall.scenarios.vector.Feature;
import org.headfall.scenarios.vector.PropertyValue;
import org.headfall.scenarios.vector.TextPosition;
import org.jspecify.annotations.Nullable;

/** Reads {@code {polygons: zones.geojson, property: T, unit: m2/d, elsewhere: 100 m2/d}}. */
final class PolygonFieldReader {
    private final Inputs inputs;
    private final MapArea area;

    PolygonFieldReader(Inputs inputs, MapArea area) {
        this.inputs = inputs;
        this.area = area;
    }

    @Nullable
    Field read(Section section, Dimension dimension, AllowedRange range) {
        @Nullable SpatialFile file = inputs.spatialFile(section, "polygons");
        @Nullable String property = section.text("property");
        double factor = MapUnit.factor(section, "polygons", section.optionalText("unit"), dimension);
        boolean hasElsewhere = section.has("elsewhere");
        @Nullable Quantity elsewhere = section.optionalQuantity("elsewhere", dimension, range);
        @Nullable List<Feature> features = file == null ? null : new FeatureFileReader(inputs, area).polygons(file);
        if (file == null || property == null || features == null || Double.isNaN(factor)) {
            return null;
        }
        List<Field.PolygonValue> polygons = new ArrayList<>();
        for (Feature feature : features) {
            double value = value(file, feature, property) * factor;
            if (isInRange(file, feature, property, value, dimension, range)) {
                polygons.add(new Field.PolygonValue(feature.geometry(), value));
            }
        }
        return polygons.size() < features.size() || (hasElsewhere && elsewhere == null)
                ? null
                : new Field.FromPolygons(
                        file,
                        polygons,
                        elsewhere == null ? OptionalDouble.empty() : OptionalDouble.of(elsewhere.value()));
    }

    /** The number of a property, NaN after a problem has been reported. */
    private double value(SpatialFile file, Feature feature, String property) {
        @Nullable PropertyValue value = feature.properties().get(property);
        if (value instanceof PropertyValue.NumberValue number) {
            return number.value();
        }
        if (value == null) {
            @Nullable
            String near = NearestSpelling.of(property, feature.properties().keySet());
            String found = "feature " + feature.number() + " without it";
            report(
                    file,
                    feature.position(),
                    property,
                    new Finding(ProblemKind.MISSING_KEY, found, "the property " + property + " in each feature", near));
        } else {
            report(
                    file,
                    value.position(),
                    property,
                    Finding.of(ProblemKind.NOT_A_NUMBER, value.shown(), "a number, its unit in the document"));
        }
        return Double.NaN;
    }

    private boolean isInRange(
            SpatialFile file, Feature feature, String property, double value, Dimension dimension, AllowedRange range) {
        @Nullable PropertyValue typed = feature.properties().get(property);
        if (typed == null || Double.isNaN(value)) {
            return false;
        }
        if (!range.contains(value)) {
            report(
                    file,
                    typed.position(),
                    property,
                    Finding.of(
                            ProblemKind.OUT_OF_RANGE,
                            (value + " " + dimension.unit()).strip(),
                            range.describe(dimension.unit())));
            return false;
        }
        return true;
    }

    private void report(SpatialFile file, TextPosition position, String property, Finding finding) {
        inputs.problems().add(FeatureFileReader.place(file, position), property, finding);
    }
}
