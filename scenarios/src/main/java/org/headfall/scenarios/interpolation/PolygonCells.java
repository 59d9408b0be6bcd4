package org.headfall.scenarios.interpolation;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntConsumer;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;

/** Puts polygons on the cells of a rectilinear grid; a cell belongs to a polygon if its centre does, or lies on its rim. */
public final class PolygonCells {
    private final CellCentres cells;

    /**
     * Polygons on cells.
     *
     * @param cells the centres of the cells
     */
    public PolygonCells(CellCentres cells) {
        this.cells = cells;
    }

    /**
     * A polygon with a value.
     *
     * @param area a polygon or several
     * @param value the value of all of it
     */
    public record PolygonValue(Geometry area, double value) {}

    /**
     * The value of the polygon each cell lies in.
     *
     * @param polygons the polygons; where they overlap the later one counts
     * @return one value a cell, row by row from south to north; NaN for cells in no polygon
     */
    public double[] values(List<PolygonValue> polygons) {
        double[] values = new double[cells.count()];
        Arrays.fill(values, Double.NaN);
        for (PolygonValue polygon : polygons) {
            forEachCell(polygon.area(), cell -> values[cell] = polygon.value());
        }
        return values;
    }

    /**
     * Which cells lie in any of some polygons.
     *
     * @param areas the polygons
     * @return one truth value a cell, row by row from south to north
     */
    public boolean[] within(List<? extends Geometry> areas) {
        boolean[] within = new boolean[cells.count()];
        for (Geometry area : areas) {
            forEachCell(area, cell -> within[cell] = true);
        }
        return within;
    }

    private void forEachCell(Geometry area, IntConsumer action) {
        PointOnGeometryLocator locator = new IndexedPointInAreaLocator(area);
        Envelope bounds = area.getEnvelopeInternal();
        Coordinate centre = new Coordinate();
        for (int row = first(cells.y(), bounds.getMinY()); row < cells.y().length; row++) {
            centre.y = cells.y()[row];
            if (centre.y > bounds.getMaxY()) {
                return;
            }
            for (int column = first(cells.x(), bounds.getMinX()); column < cells.x().length; column++) {
                centre.x = cells.x()[column];
                if (centre.x > bounds.getMaxX()) {
                    break;
                }
                if (locator.locate(centre) != Location.EXTERIOR) {
                    action.accept(row * cells.x().length + column);
                }
            }
        }
    }

    /** The first centre at or after a coordinate. */
    private static int first(double[] centres, double coordinate) {
        int found = Arrays.binarySearch(centres, coordinate);
        return found >= 0 ? found : -found - 1;
    }
}
