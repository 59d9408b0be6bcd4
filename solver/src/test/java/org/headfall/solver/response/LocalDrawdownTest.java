package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.linear.WorkerTeam;
import org.junit.jupiter.api.Test;

/** The reference is Cooper and Jacob (1946) for an even aquifer: {@code s = ln(2.25 T t / (r² S)) / (4 pi T)} for Q = 1. */
class LocalDrawdownTest {

    private static final double T = 317;
    private static final double S = 2e-4;
    private static final double RADIUS = 0.1;
    private static final double DAYS = 7;
    private static final int CELLS = 61;

    /** Cells of a third of a kilometre, whose areas do not add up exactly. */
    private static final RectilinearGrid GRID =
            new RectilinearGrid(Axis.uniform(0, 1000 / 3.0, CELLS), Axis.uniform(0, 1000 / 3.0, CELLS));

    private static double[] estimate(boolean[] active, double[] storativity) {
        int cells = GRID.cellCount();
        double[] t = InterferenceTest.level(cells, T);
        Aquifer aquifer = new Aquifer(
                GRID, t, t, storativity, InterferenceTest.level(cells, 0), InterferenceTest.level(cells, -50), active);
        FlowProblem problem = new FlowProblem(aquifer, Optional.empty(), List.of(), List.of(), List.of(), List.of());
        try (WorkerTeam team = new WorkerTeam(1)) {
            return new LocalDrawdown(problem).after(new double[] {DAYS}, RADIUS, team)[0];
        }
    }

    private static double cooperJacob(double storativity) {
        return Math.log(2.25 * T * DAYS / (RADIUS * RADIUS * storativity)) / (4 * Math.PI * T);
    }

    private static boolean[] all() {
        boolean[] active = new boolean[GRID.cellCount()];
        Arrays.fill(active, true);
        return active;
    }

    @Test
    void evenAquiferGivesCooperJacob() {
        for (double found : estimate(all(), InterferenceTest.level(GRID.cellCount(), S))) {
            assertEquals(cooperJacob(S), found, 1e-9 * cooperJacob(S));
        }
    }

    /** Islands of one cell each, around which whole rings lie in a hole: what is there is as even as before. */
    @Test
    void ringsWithoutAnyCellTakeTheMeanOfWhatIsWithin() {
        boolean[] active = all();
        for (int cell = 0; cell < active.length; cell++) {
            active[cell] = GRID.row(cell) % 9 == 4 && GRID.column(cell) % 9 == 4;
        }
        double[] found = estimate(active, InterferenceTest.level(active.length, S));
        for (int cell = 0; cell < active.length; cell++) {
            if (active[cell]) {
                assertEquals(cooperJacob(S), found[cell], 1e-9 * cooperJacob(S), "cell " + cell);
            }
        }
    }

    /**
     * Storage adds up by volume: columns of 1e-4 and 1e-3 in turn are as 5.5e-4. The geometric mean, 3.2e-4, would give 2.6 %
     * more; rings that have a column more of one than of the other allow for 0.8 %.
     */
    @Test
    void storageOfCellsSideBySideCountsByItsArithmeticMean() {
        double[] storativity = new double[GRID.cellCount()];
        Arrays.setAll(storativity, cell -> GRID.column(cell) % 2 == 0 ? 1e-4 : 1e-3);
        int middle = CELLS / 2 * CELLS + CELLS / 2;
        assertEquals(cooperJacob(5.5e-4), estimate(all(), storativity)[middle], 0.008 * cooperJacob(5.5e-4));
    }
}
