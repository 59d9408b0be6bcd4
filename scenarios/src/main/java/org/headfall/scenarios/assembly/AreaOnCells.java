package org.headfall.scenarios.assembly;

import java.util.Arrays;
import java.util.Optional;
import org.headfall.scenarios.interpolation.PolygonCells;
import org.headfall.scenarios.interpolation.PolygonCover;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.scenario.Area;
import org.headfall.solver.grid.RectilinearGrid;

/** Puts areas bounded by polygons on the cells of a grid. */
final class AreaOnCells {
    private final RectilinearGrid grid;
    private final Problems problems;

    AreaOnCells(RectilinearGrid grid, Problems problems) {
        this.grid = grid;
        this.problems = problems;
    }

    /** Which cells belong to the aquifer: those whose centre lies in its area, or all if it has none. */
    boolean[] active(Optional<Area> within) {
        boolean[] active = new boolean[grid.cellCount()];
        if (within.isEmpty()) {
            Arrays.fill(active, true);
            return active;
        }
        Area area = within.get();
        active = new PolygonCells(FieldOnCells.centres(grid)).within(area.polygons());
        int count = 0;
        for (boolean one : active) {
            count += one ? 1 : 0;
        }
        if (count == 0) {
            report(area, "polygons without the centre of a cell", "polygons that hold cells of the grid");
        }
        return active;
    }

    /** The part of each cell that an area covers; 1 if there is no area. */
    double[] shares(Optional<Area> within, boolean[] active) {
        if (within.isEmpty()) {
            double[] everywhere = new double[grid.cellCount()];
            Arrays.fill(everywhere, 1);
            return everywhere;
        }
        double[] shares = new PolygonCover(grid.x().edges(), grid.y().edges())
                .shares(within.get().polygons());
        boolean any = false;
        for (int cell = 0; cell < shares.length; cell++) {
            any |= active[cell] && shares[cell] > 0;
        }
        if (!any) {
            report(within.get(), "polygons beside the aquifer", "polygons that cover a part of the aquifer");
        }
        return shares;
    }

    private void report(Area area, String found, String allowed) {
        problems.add(area.file().place(), area.file().name(), Finding.of(ProblemKind.OUTSIDE_GRID, found, allowed));
    }
}
