package org.headfall.solver.flow;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.api.Test;

/** The solutions are held against the equation that defines them, {@code (s S + A) h = g}, cell by cell on the whole grid. */
class ShiftedSolvesTest {

    private static final int COLUMNS = 90;
    private static final int ROWS = 70;
    private static final double[] SHIFTS = {300, 30, 3, 0.3, 3e-3, 0};
    private static final double TOLERANCE = 1e-10;

    /** A middle, a corner, two cells at once, and a cell of the rim. */
    private static final List<CellWeights> SOURCES = List.of(
            CellWeights.single(35 * COLUMNS + 45),
            CellWeights.single(0),
            new CellWeights(new int[] {20 * COLUMNS + 60, 22 * COLUMNS + 63}, new double[] {0.3, 0.7}),
            CellWeights.single(40 * COLUMNS + COLUMNS - 1));

    private static FlowProblem field() {
        return field(COLUMNS, ROWS, false);
    }

    private static FlowProblem field(int columns, int rows, boolean withBed) {
        Random random = new Random(11);
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, 300, columns), Axis.uniform(0, 300, rows));
        int cells = grid.cellCount();
        double[] transmissivity = new double[cells];
        Arrays.setAll(transmissivity, cell -> 100 * Math.exp(0.8 * random.nextGaussian()));
        double[] storativity = new double[cells];
        Arrays.fill(storativity, 3e-4);
        double[] bottom = new double[cells];
        Arrays.fill(bottom, -50);
        boolean[] active = new boolean[cells];
        Arrays.fill(active, true);
        return new FlowProblem(
                new Aquifer(grid, transmissivity, transmissivity, storativity, new double[cells], bottom, active),
                withBed ? Optional.of(bed(cells)) : Optional.empty(),
                List.of(new OuterBoundary.FixedHead("west", SideSegment.whole(Side.WEST, grid), Schedule.constant(0))),
                List.of(),
                List.of(),
                List.of());
    }

    private static SealingBed bed(int cells) {
        return new SealingBed(all(cells, 60), all(cells, 2e-6), all(cells, 3e-6), all(cells, 0));
    }

    private static double[] all(int cells, double value) {
        double[] values = new double[cells];
        Arrays.fill(values, value);
        return values;
    }

    private static double norm(double[] values) {
        return Math.sqrt(Arrays.stream(values).map(value -> value * value).sum());
    }

    /** What a solution leaves of the equation as a share of its source. */
    private static double residual(FlowEquation equation, double shift, CellWeights source, double[] solution) {
        double[] right = new double[solution.length];
        source.add(1, right);
        double scale = norm(right);
        for (int cell = 0; cell < solution.length; cell++) {
            right[cell] -= shift * equation.storage()[cell] * solution[cell];
        }
        double[] left = new double[solution.length];
        equation.netInflow(right, solution, left);
        return norm(left) / scale;
    }

    /** Also where a solution is cut off: what flows out of its rectangle counts. */
    @Test
    void satisfyTheEquationOnTheWholeGrid() {
        FlowProblem problem = field();
        FlowEquation equation = new FlowEquation(problem);
        try (WorkerTeam team = new WorkerTeam(2)) {
            ShiftedSolves solves = new ShiftedSolves(problem, SOURCES, TOLERANCE, team);
            for (int round = 0; round < 2; round++) {
                for (double shift : SHIFTS) {
                    solves.solve(shift);
                    for (int i = 0; i < SOURCES.size(); i++) {
                        double left = residual(equation, shift, SOURCES.get(i), solves.drawdown(i));
                        assertTrue(left < 2 * TOLERANCE, "source " + i + " at " + shift + ": " + left);
                    }
                    boolean local = solves.window(0).cells() < COLUMNS * ROWS;
                    assertEquals(shift >= 30, local, "local at " + shift);
                }
            }
        }
    }

    /** Where the next solution needs no wider rectangle than the one before, nothing of that one stays outside. */
    @Test
    void areZeroOutsideTheirRectangles() {
        FlowProblem problem = field();
        try (WorkerTeam team = new WorkerTeam(2)) {
            ShiftedSolves solves = new ShiftedSolves(problem, SOURCES, TOLERANCE, team);
            for (double shift : new double[] {3e5, 2.9e5, 2.8e5}) {
                solves.solve(shift);
                assertTrue(solves.window(0).cells() < COLUMNS * ROWS, "local at " + shift);
                for (int i = 0; i < SOURCES.size(); i++) {
                    double[] whole = solves.drawdown(i).clone();
                    CellWindow window = solves.window(i);
                    window.paste(new double[window.cells()], whole);
                    assertEquals(0, norm(whole), "source " + i + " at " + shift);
                }
            }
        }
    }

    /** On so many cells that every loop, those over the bed too, is shared among threads. */
    @Test
    void areTheSameForAnyNumberOfThreads() {
        FlowProblem problem = field(200, 110, true);
        try (WorkerTeam two = new WorkerTeam(2);
                WorkerTeam one = new WorkerTeam(1)) {
            ShiftedSolves some = new ShiftedSolves(problem, SOURCES, TOLERANCE, two);
            ShiftedSolves other = new ShiftedSolves(problem, SOURCES, TOLERANCE, one);
            for (double shift : SHIFTS) {
                some.solve(shift);
                other.solve(shift);
                for (int i = 0; i < SOURCES.size(); i++) {
                    assertArrayEquals(other.drawdown(i), some.drawdown(i));
                }
            }
        }
    }

    /** Against the plain double sum, for local and wide solutions. */
    @Test
    void productsAreThoseOfAllCells() {
        FlowProblem problem = field();
        double[] storage = new FlowEquation(problem).storage();
        try (WorkerTeam team = new WorkerTeam(2)) {
            ShiftedSolves solves = new ShiftedSolves(problem, SOURCES, TOLERANCE, team);
            for (double shift : SHIFTS) {
                solves.solve(shift);
                PairValues products = new PairValues(SOURCES.size(), SOURCES.size(), 1);
                solves.addFalls(SOURCES.size(), products, 0);
                for (int i = 0; i < SOURCES.size(); i++) {
                    for (int j = 0; j <= i; j++) {
                        double sum = 0;
                        for (int cell = 0; cell < storage.length; cell++) {
                            sum += storage[cell] * solves.drawdown(i)[cell] * solves.drawdown(j)[cell];
                        }
                        assertEquals(sum, products.of(i, j)[0], 1e-12 * Math.abs(sum));
                    }
                }
            }
        }
    }
}
