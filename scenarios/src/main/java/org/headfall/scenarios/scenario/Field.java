package org.headfall.scenarios.scenario;

import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.raster.Raster;

/** A quantity that may differ from place to place, in metres and days. */
public sealed interface Field {
    /**
     * The same everywhere.
     *
     * @param value the value
     */
    record Constant(double value) implements Field {}

    /**
     * Values of a raster.
     *
     * @param file the file
     * @param raster its values in metres and days
     */
    record FromRaster(SpatialFile file, Raster raster) implements Field {}

    /**
     * One value a polygon.
     *
     * @param file GeoJSON file with the polygons
     * @param property name of the property that holds the value
     * @param factor what turns its numbers into metres and days
     * @param elsewhere value beyond all polygons, if there is one
     */
    record FromPolygons(SpatialFile file, String property, double factor, OptionalDouble elsewhere) implements Field {}

    /**
     * Values at points, spread over the area between them.
     *
     * @param points the points, at least one
     * @param spread how
     */
    record FromPoints(List<PointValue> points, Spread spread) implements Field {
        /** Copies the list. */
        public FromPoints {
            points = List.copyOf(points);
        }
    }

    /**
     * A value at a point.
     *
     * @param position the point
     * @param value the value
     */
    record PointValue(Position position, double value) {}
}
