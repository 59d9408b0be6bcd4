package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
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

    /**
     * Zones of other T around a bore, whose borders double in distance: Thiem (1906) from zone to zone,
     * {@code s = 1/(2 pi) sum ln(r_k+1 / r_k) / T_k}, out to the radius of Cooper and Jacob in the zone where it lies.
     */
    @Test
    void zonesAroundABoreAddUp() {
        double[] ofZone = {700, 90, 260, 40, 500};
        double expected = Math.log(50 / RADIUS) / ofZone[0];
        for (int zone = 1; zone < 4; zone++) {
            expected += Math.log(2) / ofZone[zone];
        }
        expected += Math.log(1.5 * Math.sqrt(ofZone[4] * DAYS / S) / 400) / ofZone[4];
        assertEquals(expected / (2 * Math.PI), middleOfZones(zone -> new double[] {ofZone[zone], ofZone[zone]}), 1e-12);
    }

    /** West and east of the bore T is 100 and 400 m²/d in each zone: as 200 throughout (Matheron 1967), not as 250 or 160. */
    @Test
    void zonesOfUnevenTransmissivityCountByItsGeometricMean() {
        double reach = 1.5 * Math.sqrt(200 * DAYS / S);
        double expected = Math.log(50 / RADIUS) / 300 + Math.log(reach / 50) / 200;
        double found = middleOfZones(zone -> zone == 0 ? new double[] {300, 300} : new double[] {100, 400});
        assertEquals(expected / (2 * Math.PI), found, 1e-12);
    }

    /** Estimate in the middle of square zones with edges 50, 100, 200, 400 m and more from it, each with T west and east of it. */
    private static double middleOfZones(IntFunction<double[]> transmissivity) {
        double[] edges = {
            -12800, -6400, -3200, -1600, -800, -400, -200, -100, -50, 50, 100, 200, 400, 800, 1600, 3200, 6400, 12800
        };
        RectilinearGrid grid = new RectilinearGrid(Axis.ofEdges(edges), Axis.ofEdges(edges));
        int middle = grid.columns() / 2;
        double[] t = new double[grid.cellCount()];
        for (int cell = 0; cell < t.length; cell++) {
            int east = grid.column(cell) - middle;
            int zone = Math.min(4, Math.max(Math.abs(east), Math.abs(grid.row(cell) - middle)));
            double[] ofZone = transmissivity.apply(zone);
            t[cell] = east == 0 ? Math.sqrt(ofZone[0] * ofZone[1]) : ofZone[east < 0 ? 0 : 1];
        }
        boolean[] active = new boolean[t.length];
        Arrays.fill(active, true);
        Aquifer aquifer = new Aquifer(
                grid,
                t,
                t,
                InterferenceTest.level(t.length, S),
                InterferenceTest.level(t.length, 0),
                InterferenceTest.level(t.length, -50),
                active);
        FlowProblem problem = new FlowProblem(aquifer, Optional.empty(), List.of(), List.of(), List.of(), List.of());
        try (WorkerTeam team = new WorkerTeam(1)) {
            double[] found = new LocalDrawdown(problem).after(new double[] {DAYS}, RADIUS, team)[0];
            return found[middle * grid.columns() + middle];
        }
    }
}
