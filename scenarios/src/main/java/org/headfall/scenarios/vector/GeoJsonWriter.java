package org.headfall.scenarios.vector;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.function.UnaryOperator;
import org.headfall.scenarios.reference.CoordinateReference;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;

/**
 * Writes features as a GeoJSON FeatureCollection (RFC 7946), one feature a line, outer outlines anticlockwise and holes
 * clockwise.
 */
public final class GeoJsonWriter {
    /** Degrees are rounded to about a centimetre on the ground. */
    private static final double PARTS_OF_A_DEGREE = 1e7;

    private static final double PARTS_OF_A_METRE = 1e3;

    private final UnaryOperator<Coordinate> placement;

    private GeoJsonWriter(UnaryOperator<Coordinate> placement) {
        this.placement = placement;
    }

    /**
     * A writer of longitude and latitude, to 1e-7 of a degree. They are on the datum of the reference system, which may
     * differ from WGS 84 by a metre or two.
     *
     * @param reference the reference system of the shapes
     */
    public static GeoJsonWriter inDegrees(CoordinateReference reference) {
        return new GeoJsonWriter(plane -> {
            CoordinateReference.GeographicPosition place = reference.toGeographic(plane.x, plane.y);
            return rounded(place.longitude(), place.latitude(), PARTS_OF_A_DEGREE);
        });
    }

    /**
     * A writer of the coordinates of the plane as they are, to the millimetre: what {@link GeoJsonReader} reads. RFC 7946
     * leaves it to those who exchange such files to agree on what the coordinates mean.
     */
    public static GeoJsonWriter inPlane() {
        return new GeoJsonWriter(plane -> rounded(plane.x, plane.y, PARTS_OF_A_METRE));
    }

    private static Coordinate rounded(double x, double y, double parts) {
        if (!Double.isFinite(x + y)) {
            throw new IllegalArgumentException("a shape to be written has the coordinates " + x + ", " + y);
        }
        return new Coordinate(Math.rint(x * parts) / parts, Math.rint(y * parts) / parts);
    }

    /**
     * Writes features to a file, which appears under its name when it is whole.
     *
     * @param features shapes of the kinds Point, LineString, Polygon and MultiPolygon
     * @param file the file, replaced if it exists
     * @throws IllegalArgumentException if a shape is of another kind or empty, or has coordinates that are not finite
     * @throws SpatialFormatException if the projection does not reach a shape
     * @throws IOException if the file cannot be written
     */
    public void write(List<Feature> features, Path file) throws IOException {
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        write(features, text);
        Path part = file.resolveSibling(file.getFileName() + ".part");
        Files.write(part, text.toByteArray());
        Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
    }

    /**
     * Writes features.
     *
     * @param features shapes of the kinds Point, LineString, Polygon and MultiPolygon
     * @param stream receives UTF-8 text; not closed
     * @throws IllegalArgumentException if a shape is of another kind or empty, or has coordinates that are not finite
     * @throws SpatialFormatException if the projection does not reach a shape
     * @throws tools.jackson.core.exc.JacksonIOException if the stream cannot be written
     */
    public void write(List<Feature> features, OutputStream stream) {
        JsonFactory factory = JsonFactory.builder()
                .disable(tools.jackson.core.StreamWriteFeature.AUTO_CLOSE_TARGET)
                .build();
        try (JsonGenerator json = factory.createGenerator(ObjectWriteContext.empty(), stream)) {
            json.writeStartObject();
            json.writeStringProperty("type", "FeatureCollection");
            json.writeArrayPropertyStart("features");
            for (Feature feature : features) {
                json.writeRaw('\n');
                write(json, feature);
            }
            json.writeEndArray();
            json.writeEndObject();
            json.writeRaw('\n');
        }
    }

    private void write(JsonGenerator json, Feature feature) {
        json.writeStartObject();
        json.writeStringProperty("type", "Feature");
        json.writeObjectPropertyStart("properties");
        feature.properties().forEach((name, value) -> write(json, name, value));
        json.writeEndObject();
        json.writeObjectPropertyStart("geometry");
        json.writeStringProperty("type", kind(feature.geometry()));
        json.writeName("coordinates");
        write(json, feature.geometry());
        json.writeEndObject();
        json.writeEndObject();
    }

    private static String kind(Geometry shape) {
        return shape instanceof LineString ? "LineString" : shape.getGeometryType();
    }

    private static void write(JsonGenerator json, String name, PropertyValue value) {
        json.writeName(name);
        if (value instanceof PropertyValue.TextValue text) {
            json.writeString(text.value());
        } else if (value instanceof PropertyValue.NumberValue number) {
            writeNumber(json, number.value());
        } else if (value instanceof PropertyValue.TruthValue truth) {
            json.writeBoolean(truth.value());
        } else if (value instanceof PropertyValue.NestedValue nested) {
            json.writeRawValue(nested.json());
        } else {
            json.writeNull();
        }
    }

    /** Whole numbers without a point, as other programs write them. */
    private static void writeNumber(JsonGenerator json, double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1e15) {
            json.writeNumber((long) value);
        } else {
            json.writeNumber(value);
        }
    }

    private void write(JsonGenerator json, Geometry shape) {
        if (shape.isEmpty()) {
            throw new IllegalArgumentException("a shape to be written is empty");
        }
        if (shape instanceof Point point) {
            write(json, point.getCoordinate());
        } else if (shape instanceof LineString line) {
            writePath(json, line.getCoordinates());
        } else if (shape instanceof Polygon polygon) {
            writePolygon(json, polygon);
        } else if (shape instanceof MultiPolygon polygons) {
            json.writeStartArray();
            for (int i = 0; i < polygons.getNumGeometries(); i++) {
                writePolygon(json, (Polygon) polygons.getGeometryN(i));
            }
            json.writeEndArray();
        } else {
            throw new IllegalArgumentException(
                    "a shape to be written is a " + shape.getGeometryType() + ", allowed: " + GeometryBuilder.KINDS);
        }
    }

    private void writePolygon(JsonGenerator json, Polygon polygon) {
        json.writeStartArray();
        writeRing(json, polygon.getExteriorRing(), true);
        for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
            writeRing(json, polygon.getInteriorRingN(i), false);
        }
        json.writeEndArray();
    }

    private void writeRing(JsonGenerator json, LineString ring, boolean anticlockwise) {
        boolean turns = Orientation.isCCW(ring.getCoordinateSequence()) == anticlockwise;
        writePath(json, turns ? ring.getCoordinates() : ring.reverse().getCoordinates());
    }

    private void writePath(JsonGenerator json, Coordinate[] path) {
        json.writeStartArray();
        for (Coordinate coordinate : path) {
            write(json, coordinate);
        }
        json.writeEndArray();
    }

    private void write(JsonGenerator json, Coordinate plane) {
        Coordinate placed = placement.apply(plane);
        json.writeStartArray();
        writeNumber(json, placed.x);
        writeNumber(json, placed.y);
        json.writeEndArray();
    }
}
