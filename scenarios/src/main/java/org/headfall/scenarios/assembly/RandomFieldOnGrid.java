package org.headfall.scenarios.assembly;

import java.util.stream.IntStream;
import org.headfall.scenarios.randomfield.Lattice;
import org.headfall.scenarios.raster.Raster;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.spatial.Extent;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Draws random fields for a grid: on even cells as small as the smallest of the grid where that takes no more than {@value
 * org.headfall.scenarios.randomfield.Lattice#MOST_CELLS} on a side. So on an even grid each cell has a value of its own, and
 * larger cells of a refined grid get the mean of what lies in them.
 */
public final class RandomFieldOnGrid {

    private RandomFieldOnGrid() {}

    /**
     * Draws the field.
     *
     * @param field which
     * @param grid the grid that it has to cover
     * @return the values, in metres and days
     * @throws IllegalArgumentException if it cannot be drawn; the message says why
     */
    public static Raster draw(Field.Random field, RectilinearGrid grid) {
        Extent area = Extent.of(grid.x().edges(), grid.y().edges());
        Lattice lattice = Lattice.over(area, smallest(grid.x()), smallest(grid.y()));
        return field.field().on(lattice).draw(field.seed(), field.number());
    }

    private static double smallest(Axis axis) {
        double[] edges = axis.edges();
        return IntStream.range(1, edges.length)
                .mapToDouble(i -> edges[i] - edges[i - 1])
                .min()
                .orElseThrow();
    }
}
