package org.headfall.scenarios.limits;

import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * The parts of the map that limits hold for.
 *
 * @param parts each part by its words
 * @param days days on which heads of the grid are needed for them, besides the report dates (d since the start)
 */
@SuppressWarnings("ArrayRecordComponent") // made once a run, never compared
public record MapPlaces(Map<String, Part> parts, double[] days) {
    /** No limit holds for a part of the map. */
    public static final MapPlaces NONE = new MapPlaces(Map.of(), new double[0]);

    /** Copies the map. */
    public MapPlaces {
        parts = Map.copyOf(parts);
    }

    /**
     * A part of the map.
     *
     * @param shapes its polygons or lines (m); none for the whole aquifer
     * @param cells active cells that belong to it
     */
    @SuppressWarnings("ArrayRecordComponent") // 10⁵ cells, shared and never compared
    public record Part(List<Geometry> shapes, int[] cells) {
        private static final GeometryFactory POINTS = new GeometryFactory();

        /** Copies the list. */
        public Part {
            shapes = List.copyOf(shapes);
        }

        /**
         * Distance of a point to the nearest of the shapes.
         *
         * @param x easting (m)
         * @param y northing (m)
         * @return the distance (m), zero inside a polygon; NaN if there are no shapes
         */
        public double distance(double x, double y) {
            Geometry point = POINTS.createPoint(new Coordinate(x, y));
            return shapes.stream().mapToDouble(point::distance).min().orElse(Double.NaN);
        }
    }
}
