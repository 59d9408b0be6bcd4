package org.headfall.scenarios.assembly;

import java.util.Arrays;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.raster.Averaging;
import org.headfall.scenarios.raster.CellSampler;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.SpatialFile;
import org.headfall.solver.grid.RectilinearGrid;

/** Puts fields on the cells of a grid. */
final class FieldOnCells {
    private final RectilinearGrid grid;
    private final boolean[] active;
    private final Problems problems;

    FieldOnCells(RectilinearGrid grid, boolean[] active, Problems problems) {
        this.grid = grid;
        this.active = active;
        this.problems = problems;
    }

    /**
     * Values of a field on every cell.
     *
     * @param field the field
     * @param averaging how several values within a cell become one
     * @param unused value of cells that do not belong to the aquifer and for which the field has none
     * @return one value a cell, all of them numbers; where a cell of the aquifer has none a problem is reported and the
     *     unused value stands in
     */
    double[] values(Field field, Averaging averaging, double unused) {
        if (field instanceof Field.Constant constant) {
            double[] values = new double[grid.cellCount()];
            Arrays.fill(values, constant.value());
            return values;
        }
        if (field instanceof Field.FromRaster raster) {
            double[] values =
                    new CellSampler(grid.x().edges(), grid.y().edges()).cellValues(raster.raster(), averaging);
            fillHoles(values, raster.file(), unused);
            return values;
        }
        throw new IllegalStateException("no values on cells for " + field);
    }

    private void fillHoles(double[] values, SpatialFile file, double unused) {
        int missing = 0;
        int first = -1;
        for (int cell = 0; cell < values.length; cell++) {
            if (Double.isNaN(values[cell])) {
                if (active[cell]) {
                    first = missing == 0 ? cell : first;
                    missing++;
                }
                values[cell] = unused;
            }
        }
        if (missing > 0) {
            String found = "no value in " + missing + " cells of the aquifer, the first at x " + grid.centreX(first)
                    + ", y " + grid.centreY(first);
            problems.add(
                    file.place(),
                    file.name(),
                    Finding.of(ProblemKind.RASTER_COVER, found, "a value in every cell of the aquifer"));
        }
    }
}
