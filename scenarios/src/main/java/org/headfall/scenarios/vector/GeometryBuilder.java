package org.headfall.scenarios.vector;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/** Makes shapes of the kinds Headfall uses from coordinates. */
final class GeometryBuilder {
    static final String KINDS = "Point, LineString, Polygon or MultiPolygon";

    private static final int LEAST_RING = 4;

    private final GeometryFactory factory = new GeometryFactory();
    private final JsonText text;

    GeometryBuilder(JsonText text) {
        this.text = text;
    }

    /** The shape of a kind, with a fault if the coordinates do not have its form. */
    Geometry build(String kind, TextPosition kindPosition, Coordinates coordinates) {
        return switch (kind) {
            case "Point" -> point(coordinates);
            case "LineString" -> line(coordinates);
            case "Polygon" -> polygon(coordinates);
            case "MultiPolygon" ->
                factory.createMultiPolygon(each(coordinates, this::polygon).toArray(new Polygon[0]));
            default -> throw text.fault(kindPosition, "a shape of the kind \"" + kind + "\"", KINDS);
        };
    }

    private Point point(Coordinates coordinates) {
        if (coordinates instanceof Coordinates.Pair pair) {
            return factory.createPoint(new Coordinate(pair.x(), pair.y()));
        }
        throw wrong(coordinates, "the coordinates of a point, as in [349500, 6521000]");
    }

    private LineString line(Coordinates coordinates) {
        Coordinate[] path = path(coordinates);
        if (path.length < 2) {
            throw wrong(coordinates, "a line of two points at least");
        }
        return factory.createLineString(path);
    }

    private Polygon polygon(Coordinates coordinates) {
        List<LinearRing> rings = each(coordinates, this::ring);
        return factory.createPolygon(
                rings.get(0), rings.subList(1, rings.size()).toArray(new LinearRing[0]));
    }

    private LinearRing ring(Coordinates coordinates) {
        Coordinate[] path = path(coordinates);
        Coordinate first = path[0];
        Coordinate last = path[path.length - 1];
        if (!first.equals2D(last)) {
            throw wrong(
                    coordinates,
                    "an outline that begins at " + CoordinateWords.of(first.x, first.y) + " and ends at "
                            + CoordinateWords.of(last.x, last.y),
                    "an outline whose last coordinates repeat the first");
        }
        if (path.length < LEAST_RING) {
            throw wrong(
                    coordinates,
                    "an outline of " + path.length + " coordinates",
                    "three corners at least and the first of them again");
        }
        return factory.createLinearRing(path);
    }

    private Coordinate[] path(Coordinates coordinates) {
        return each(coordinates, entry -> {
                    if (entry instanceof Coordinates.Pair pair) {
                        return new Coordinate(pair.x(), pair.y());
                    }
                    throw wrong(entry, "easting and northing, as in [349500, 6521000]");
                })
                .toArray(new Coordinate[0]);
    }

    /** The parts of a list that is not empty. */
    private <T> List<T> each(Coordinates coordinates, Function<Coordinates, T> part) {
        if (coordinates instanceof Coordinates.Listing listing
                && !listing.entries().isEmpty()) {
            List<T> parts = new ArrayList<>(listing.entries().size());
            listing.entries().forEach(entry -> parts.add(part.apply(entry)));
            return parts;
        }
        throw wrong(coordinates, "a list of coordinates as deep as the shape asks for");
    }

    private SpatialFormatException wrong(Coordinates coordinates, String allowed) {
        return wrong(coordinates, coordinates.shown(), allowed);
    }

    private SpatialFormatException wrong(Coordinates coordinates, String found, String allowed) {
        return text.fault(coordinates.position(), found, allowed);
    }
}
