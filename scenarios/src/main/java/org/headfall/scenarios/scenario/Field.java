package org.headfall.scenarios.scenario;

import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.randomfield.LognormalField;
import org.headfall.scenarios.raster.Raster;
import org.headfall.scenarios.spatial.Position;
import org.locationtech.jts.geom.Geometry;

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
     * @param polygons the polygons and their values in metres and days; where they overlap the later one counts
     * @param elsewhere value beyond all polygons, if there is one
     */
    record FromPolygons(SpatialFile file, List<PolygonValue> polygons, OptionalDouble elsewhere) implements Field {
        /** Copies the list. */
        public FromPolygons {
            polygons = List.copyOf(polygons);
        }
    }

    /**
     * Values at points, spread over the area between them.
     *
     * @param file table of the points
     * @param points the points, at least one, no two in one place
     * @param spread how
     * @param variogram used for kriging
     */
    record FromPoints(SpatialFile file, List<PointValue> points, Spread spread, VariogramSpecification variogram)
            implements Field {
        /** Copies the list. */
        public FromPoints {
            points = List.copyOf(points);
        }
    }

    /**
     * One of many fields that may be there, as a random number generator gives it.
     *
     * @param key name of the key in messages, such as {@code aquifer.transmissivity}
     * @param place where it stands in the document
     * @param field what all fields have in common, in metres and days
     * @param unit unit of the values, such as m2/d; empty for numbers
     * @param seed decides the fields
     * @param number which of them
     */
    record Random(String key, Place place, LognormalField field, String unit, long seed, int number) implements Field {}

    /**
     * The value of a polygon.
     *
     * @param polygon a polygon or several (m); shared, must not be changed
     * @param value the value in metres and days
     */
    record PolygonValue(Geometry polygon, double value) {}

    /**
     * A value at a point.
     *
     * @param position the point
     * @param value the value
     */
    record PointValue(Position position, double value) {}
}
