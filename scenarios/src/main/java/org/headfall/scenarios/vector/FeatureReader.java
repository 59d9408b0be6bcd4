package org.headfall.scenarios.vector;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;
import tools.jackson.core.JsonToken;

/** Reads the objects of one GeoJSON file; their members may come in any order. */
final class FeatureReader {
    private static final String ALLOWED_ROOT = "the types FeatureCollection and Feature";

    private final Path file;
    private final JsonText text;
    private final VectorLimits limits;
    private final Consumer<SpatialFormatException> faults;
    private final CoordinatesReader coordinates;
    private final GeometryBuilder builder;
    private final List<Feature> features = new ArrayList<>();
    private int count;
    private Optional<String> reference = Optional.empty();

    /** The members of an object of the file as far as they have been met. */
    private static final class Draft {
        final TextPosition position;
        TextPosition typePosition;

        @Nullable
        String type;

        @Nullable
        ShapeDraft shape;

        Map<String, PropertyValue> properties = Map.of();
        boolean hasFeatures;

        Draft(TextPosition position) {
            this.position = position;
            this.typePosition = position;
        }
    }

    /** The members of a geometry. */
    private record ShapeDraft(
            @Nullable String kind,
            TextPosition kindPosition,
            @Nullable Coordinates coordinates) {}

    FeatureReader(Path file, JsonText text, VectorLimits limits, Consumer<SpatialFormatException> faults) {
        this.file = file;
        this.text = text;
        this.limits = limits;
        this.faults = faults;
        this.coordinates = new CoordinatesReader(text, limits);
        this.builder = new GeometryBuilder(text);
    }

    FeatureFile read() {
        text.next();
        Draft root = draft(true);
        if ("FeatureCollection".equals(root.type)) {
            if (!root.hasFeatures) {
                throw text.fault(root.position, "no member \"features\"", "a list of features");
            }
        } else if ("Feature".equals(root.type)) {
            add(root);
        } else {
            String found = root.type == null ? "no member \"type\"" : "the type \"" + root.type + "\"";
            throw text.fault(root.typePosition, found, ALLOWED_ROOT);
        }
        if (text.next() != null) {
            throw text.fault("more text after the features", "one object in a file");
        }
        if (count == 0) {
            throw text.fault(root.position, "no feature", "one feature at least");
        }
        return new FeatureFile(file, features, reference);
    }

    private void requireObject(String what) {
        if (text.token() != JsonToken.START_OBJECT) {
            throw text.fault(text.shown(), what + " in braces");
        }
    }

    /** The object whose first brace the text stands at; moves to its last. */
    private Draft draft(boolean root) {
        requireObject("an object");
        Draft draft = new Draft(text.position());
        while (text.next() == JsonToken.PROPERTY_NAME) {
            String name = text.text();
            text.next();
            switch (name) {
                case "type" -> {
                    draft.typePosition = text.position();
                    draft.type = word();
                }
                case "geometry" -> draft.shape = text.token() == JsonToken.VALUE_NULL ? null : shape();
                case "properties" -> draft.properties = properties();
                case "features" -> {
                    draft.hasFeatures = true;
                    readFeatures(root);
                }
                case "crs" -> reference = root ? reference() : reference;
                default -> text.skip();
            }
        }
        return draft;
    }

    private String word() {
        if (text.token() != JsonToken.VALUE_STRING) {
            throw text.fault(text.shown(), "a word in quotes");
        }
        return text.text();
    }

    private void readFeatures(boolean root) {
        if (!root || text.token() != JsonToken.START_ARRAY) {
            throw text.fault(text.shown(), root ? "a list of features" : "no features within a feature");
        }
        while (text.next() != JsonToken.END_ARRAY) {
            Draft draft = draft(false);
            if (!"Feature".equals(draft.type)) {
                String found = draft.type == null ? "no member \"type\"" : "the type \"" + draft.type + "\"";
                throw text.fault(draft.typePosition, found, "the type Feature");
            }
            add(draft);
        }
    }

    private void add(Draft draft) {
        count++;
        if (count > limits.features()) {
            throw text.fault(draft.position, "more features", "up to " + limits.features() + " features in a file");
        }
        try {
            features.add(new Feature(geometry(draft), draft.properties, count, draft.position));
        } catch (SpatialFormatException fault) {
            faults.accept(fault);
        }
    }

    private Geometry geometry(Draft draft) {
        @Nullable ShapeDraft shape = draft.shape;
        if (shape == null) {
            throw text.fault(draft.position, "feature " + count + " without a geometry", GeometryBuilder.KINDS);
        }
        if (shape.kind() == null) {
            throw text.fault(shape.kindPosition(), "a geometry without a type", GeometryBuilder.KINDS);
        }
        if (shape.coordinates() == null) {
            String found = "a " + shape.kind() + " without coordinates";
            throw text.fault(shape.kindPosition(), found, "a geometry with coordinates: " + GeometryBuilder.KINDS);
        }
        Geometry geometry = builder.build(shape.kind(), shape.kindPosition(), shape.coordinates());
        ShapeCheck.fault(geometry).ifPresent(fault -> {
            throw text.fault(
                    draft.position, "in feature " + count + " " + fault, "proper shapes, whose outlines do not cross");
        });
        return geometry;
    }

    private ShapeDraft shape() {
        requireObject("a geometry");
        TextPosition kindPosition = text.position();
        @Nullable String kind = null;
        @Nullable Coordinates found = null;
        while (text.next() == JsonToken.PROPERTY_NAME) {
            String name = text.text();
            text.next();
            if (name.equals("type")) {
                kindPosition = text.position();
                kind = word();
            } else if (name.equals("coordinates")) {
                found = coordinates.read();
            } else {
                text.skip();
            }
        }
        return new ShapeDraft(kind, kindPosition, found);
    }

    private Map<String, PropertyValue> properties() {
        if (text.token() == JsonToken.VALUE_NULL) {
            return Map.of();
        }
        requireObject("properties");
        Map<String, PropertyValue> properties = new LinkedHashMap<>();
        while (text.next() == JsonToken.PROPERTY_NAME) {
            String name = text.text();
            @Nullable JsonToken token = text.next();
            if (token != null) {
                properties.put(name, property(token));
            }
        }
        return properties;
    }

    private PropertyValue property(JsonToken token) {
        TextPosition position = text.position();
        return switch (token) {
            case VALUE_STRING -> new PropertyValue.TextValue(text.text(), position);
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new PropertyValue.NumberValue(text.number(), position);
            case VALUE_TRUE -> new PropertyValue.TruthValue(true, position);
            case VALUE_FALSE -> new PropertyValue.TruthValue(false, position);
            case VALUE_NULL -> new PropertyValue.NoValue(position);
            default -> new PropertyValue.NestedValue(text.nested(), position);
        };
    }

    /** The name in {@code "crs": {"type": "name", "properties": {"name": ...}}}, wherever it stands in it. */
    private Optional<String> reference() {
        Optional<String> name = Optional.empty();
        int depth = text.token() == JsonToken.START_OBJECT ? 1 : 0;
        while (depth > 0) {
            @Nullable JsonToken token = text.next();
            if (token == JsonToken.START_OBJECT || token == JsonToken.START_ARRAY) {
                depth++;
            } else if (token == JsonToken.END_OBJECT || token == JsonToken.END_ARRAY) {
                depth--;
            } else if (token == JsonToken.PROPERTY_NAME && text.text().equals("name")) {
                name = text.next() == JsonToken.VALUE_STRING ? Optional.of(text.text()) : name;
            }
        }
        return name;
    }
}
