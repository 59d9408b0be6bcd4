package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.RectilinearGrid;
import org.junit.jupiter.api.Test;

/** The reference is each cell solved for by itself, as {@link UnitResponses} does for a bore that stands there. */
class OwnDrawdownTest {

    private static final EffectFields.NewBore BORE = new EffectFields.NewBore(0.1, 100, 3650);
    private static final long SEED = 5;

    private static FlowProblem field() {
        FlowProblem like = InterferenceTest.field();
        Aquifer aquifer = EffectFieldsTest.smooth(like.aquifer());
        return new FlowProblem(aquifer, like.sealingBed(), like.boundaries(), List.of(), List.of(), List.of());
    }

    /** To 2.2 % at every cell and 1 % as root mean square, four cells or more off the sides; and the stated error is no boast. */
    @Test
    void agreesWithCellsSolvedForByThemselves() {
        FlowProblem problem = field();
        RectilinearGrid grid = problem.aquifer().grid();
        boolean[] wanted = new boolean[grid.cellCount()];
        Arrays.fill(wanted, true);
        OwnDrawdown own = new OwnDrawdown(problem, wanted, BORE, 40, 1);
        List<Bore> bores = new ArrayList<>();
        List<Integer> cells = new ArrayList<>();
        Random random = new Random(SEED);
        while (cells.size() < 20) {
            int cell = random.nextInt(grid.cellCount());
            int column = grid.column(cell);
            int row = grid.row(cell);
            if (column > 3 && row > 3 && column < grid.columns() - 4 && row < grid.rows() - 4) {
                cells.add(cell);
                bores.add(new Bore(
                        "b" + cells.size(), grid.centreX(cell), grid.centreY(cell), 0.1, WellLoss.NONE, List.of()));
            }
        }
        UnitResponses solved = UnitResponses.of(problem.withBores(bores), List.of(), BORE.longest(), 1);
        double[] times = {BORE.shortest(), BORE.longest()};
        List<OwnDrawdown.Estimate> estimates = own.after(times);
        for (int k = 0; k < times.length; k++) {
            double time = times[k];
            OwnDrawdown.Estimate estimate = estimates.get(k);
            double square = 0;
            for (int i = 0; i < bores.size(); i++) {
                double reference = solved.at(i, i, time);
                double relative = estimate.drawdown()[cells.get(i)] / reference - 1;
                square += relative * relative / bores.size();
                assertEquals(0, relative, 0.022, "cell " + cells.get(i) + " after " + time + " d");
            }
            assertTrue(Math.sqrt(square) <= 0.01, "root mean square " + Math.sqrt(square));
            assertTrue(Math.sqrt(square) <= 2 * estimate.relativeError(), "stated " + estimate.relativeError());
        }
    }

    /** Bit for bit the same with one, two and three threads, and whichever times are asked for together. */
    @Test
    void doesNotDependOnThreadsOrOnTimesAskedForTogether() {
        FlowProblem problem = field();
        boolean[] wanted = new boolean[problem.aquifer().grid().cellCount()];
        Arrays.fill(wanted, true);
        double[] times = {BORE.longest(), BORE.shortest(), 1000};
        OwnDrawdown alone = new OwnDrawdown(problem, wanted, BORE, 9, 1);
        List<OwnDrawdown.Estimate> expected = alone.after(times);
        for (int threads : new int[] {2, 3}) {
            List<OwnDrawdown.Estimate> found = new OwnDrawdown(problem, wanted, BORE, 9, threads).after(times);
            for (int k = 0; k < times.length; k++) {
                assertArrayEquals(expected.get(k).drawdown(), found.get(k).drawdown(), 0.0);
                assertEquals(expected.get(k).relativeError(), found.get(k).relativeError(), 0.0);
            }
        }
        for (int k = 0; k < times.length; k++) {
            OwnDrawdown.Estimate single = alone.after(new double[] {times[k]}).get(0);
            assertArrayEquals(expected.get(k).drawdown(), single.drawdown(), 0.0);
        }
    }
}
