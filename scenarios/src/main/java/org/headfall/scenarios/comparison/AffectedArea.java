package org.headfall.scenarios.comparison;

import java.util.ArrayList;
import java.util.List;
import org.headfall.solver.grid.RectilinearGrid;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/**
 * The cells whose head is lower by a threshold or more, as polygons along their edges: nothing is smoothed, so that the
 * area is the one that was computed.
 */
public final class AffectedArea {

    private static final GeometryFactory SHAPES = new GeometryFactory();

    private AffectedArea() {}

    /**
     * Polygons of an area.
     *
     * @param grid the grid
     * @param lowerBy how much lower head is in each cell (m), NaN where there is no aquifer
     * @param threshold the threshold (m)
     * @return the area in the coordinates of the grid; empty if no cell is affected
     */
    public static Geometry of(RectilinearGrid grid, double[] lowerBy, double threshold) {
        List<Geometry> strips = new ArrayList<>();
        int columns = grid.columns();
        for (int row = 0; row < grid.rows(); row++) {
            int first = 0;
            while (first < columns) {
                int end = first;
                while (end < columns && lowerBy[row * columns + end] >= threshold) {
                    end++;
                }
                if (end > first) {
                    strips.add(SHAPES.toGeometry(new Envelope(
                            new Coordinate(grid.x().edge(first), grid.y().edge(row)),
                            new Coordinate(grid.x().edge(end), grid.y().edge(row + 1)))));
                }
                first = end + 1;
            }
        }
        return strips.isEmpty() ? SHAPES.createPolygon() : UnaryUnionOp.union(strips);
    }
}
