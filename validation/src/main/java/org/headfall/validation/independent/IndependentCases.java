package org.headfall.validation.independent;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.flow.FlowEquation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.linear.FivePointMatrix;
import org.headfall.solver.linear.LinearSolver;
import org.headfall.solver.linear.StoppingRule;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Part;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Standing;
import org.headfall.validation.check.Tolerance;
import org.headfall.validation.check.UnavailableException;
import org.headfall.validation.check.ValidationCase;

/** The cases of this package. */
public final class IndependentCases {

    private static final long SEED = 20261125;
    private static final double STEP = 30;

    private static final Source SCIPY = new Source(
            "Virtanen and others",
            2020,
            "SciPy, Nature Methods 17, 261-272",
            "scipy.sparse.linalg.splu (SuperLU)",
            Standing.RECOMPUTED);

    private IndependentCases() {}

    /** All of them. */
    public static List<ValidationCase> all() {
        return List.of(
                scipy("scipy-steady", "The steady heads of a rough field, solved again by SciPy", 0),
                scipy("scipy-step", "One implicit step of 30 days in a rough field, solved again by SciPy", 1 / STEP),
                RichardsonRates.space(),
                RichardsonRates.time());
    }

    private static ValidationCase scipy(String name, String title, double storageWeight) {
        return new ValidationCase(
                name,
                title,
                Part.INDEPENDENT,
                List.of(SCIPY),
                "The linear solver gives the answer of the discrete equations: T over six decades from cell to cell,"
                        + " anisotropic, cells from 20 m to 2 km, dead cells, a leaking bed and three kinds of sides.",
                "That the discrete equations are the right ones; the other cases do.",
                ValidationCase.Pace.FAST,
                findings -> solveAgain(storageWeight, findings));
    }

    private static void solveAgain(double storageWeight, Findings findings) throws UnavailableException {
        FlowProblem problem = roughField();
        FlowEquation equation = new FlowEquation(problem);
        double[] right = new double[equation.size()];
        equation.sources(0, right);
        for (int cell = 0; cell < right.length; cell++) {
            right[cell] += storageWeight * equation.storage()[cell] * 100;
        }
        double[] ours = storageWeight == 0 ? steady(problem) : step(equation, storageWeight, right);
        double[] theirs = scipy(equation, storageWeight, right, findings);
        for (int cell = 0; cell < ours.length; cell++) {
            if (cell % 37 == 0 && problem.aquifer().active()[cell]) {
                findings.compare(Comparison.withFormula(
                        "head in cell " + cell, "m", theirs[cell], ours[cell], bar(theirs[cell])));
            }
        }
        double worst = 0;
        int where = 0;
        for (int cell = 0; cell < ours.length; cell++) {
            double off = Math.abs(ours[cell] - theirs[cell]) / Math.max(Math.abs(theirs[cell]), 1e-300);
            where = off > worst ? cell : where;
            worst = Math.max(worst, off);
        }
        findings.compare(Comparison.withFormula(
                "largest relative difference of any cell, in cell " + where + " with head " + theirs[where] + " m",
                "-",
                0,
                worst,
                new Tolerance(1e-8, "asked for: 1e-8")));
        findings.note(equation.aquifer().grid() + ", seed " + SEED);
    }

    private static Tolerance bar(double head) {
        return Tolerance.share(1e-8, head, "asked for: 1e-8 of the head");
    }

    private static double[] steady(FlowProblem problem) {
        try (Simulation simulation = new Simulation(problem, Settings.DEFAULT)) {
            return simulation.steadyHead(0);
        }
    }

    private static double[] step(FlowEquation equation, double storageWeight, double[] right) {
        double[] diagonal = equation.diagonal().clone();
        for (int cell = 0; cell < diagonal.length; cell++) {
            diagonal[cell] += storageWeight * equation.storage()[cell];
        }
        RectilinearGrid grid = equation.aquifer().grid();
        FivePointMatrix matrix = new FivePointMatrix(
                grid.columns(), grid.rows(), diagonal, equation.eastConductance(), equation.northConductance());
        double[] head = new double[diagonal.length];
        try (WorkerTeam team = new WorkerTeam(1)) {
            LinearSolver.forMatrix(matrix, team).solve(right, head, StoppingRule.relative(1e-12));
        }
        return head;
    }

    private static double[] scipy(FlowEquation equation, double storageWeight, double[] right, Findings findings)
            throws UnavailableException {
        try {
            Path folder = Files.createTempDirectory("headfall-validation");
            Path matrixFile = folder.resolve("matrix.mtx");
            Path rightFile = folder.resolve("right.mtx");
            try {
                MatrixMarket.writeMatrix(equation, storageWeight, matrixFile);
                MatrixMarket.writeVector(right, rightFile);
                List<String> answer = SciPy.solve(matrixFile, rightFile);
                findings.note("SciPy " + answer.get(0));
                return answer.stream().skip(1).mapToDouble(Double::parseDouble).toArray();
            } finally {
                Files.deleteIfExists(matrixFile);
                Files.deleteIfExists(rightFile);
                Files.delete(folder);
            }
        } catch (IOException failure) {
            throw new UncheckedIOException("files for SciPy", failure);
        }
    }

    /** Everything the linear part knows, at random. */
    private static FlowProblem roughField() {
        Random random = new Random(SEED);
        RectilinearGrid grid = new RectilinearGrid(uneven(random, 61), uneven(random, 47));
        int cells = grid.cellCount();
        double[] tx = new double[cells];
        double[] ty = new double[cells];
        double[] recharge = new double[cells];
        double[] conductivity = new double[cells];
        boolean[] active = new boolean[cells];
        for (int cell = 0; cell < cells; cell++) {
            tx[cell] = Math.pow(10, 6 * random.nextDouble() - 2);
            ty[cell] = tx[cell] * Math.pow(10, 2 * random.nextDouble() - 1);
            // Some cells are pumped, some get rain.
            recharge[cell] = 1e-4 * (random.nextDouble() - 0.4);
            conductivity[cell] = random.nextInt(3) == 0 ? 0 : 1e-5 * random.nextDouble();
            active[cell] = random.nextInt(12) > 0;
        }
        SealingBed bed = new SealingBed(filled(cells, 60), conductivity, filled(cells, 0), filled(cells, 120));
        List<OuterBoundary> rim = Stream.of(
                        new OuterBoundary.FixedHead("west", SideSegment.whole(Side.WEST, grid), Schedule.constant(150)),
                        new OuterBoundary.FarHead(
                                "east", SideSegment.whole(Side.EAST, grid), Schedule.constant(90), 20_000),
                        new OuterBoundary.GivenFlow(
                                "south", SideSegment.whole(Side.SOUTH, grid), Schedule.constant(400)))
                .map(OuterBoundary.class::cast)
                .toList();
        for (int cell = 0; cell < cells; cell++) {
            // Cells without neighbours would hang on nothing: every cell leaks a little.
            conductivity[cell] = Math.max(conductivity[cell], 1e-9);
        }
        Aquifer aquifer =
                new Aquifer(grid, tx, ty, filled(cells, 2e-4), filled(cells, -100), filled(cells, -200), active);
        return new FlowProblem(
                aquifer,
                Optional.of(bed),
                rim,
                List.of(new Recharge("rain and pumping", recharge, Schedule.constant(1))),
                List.of(),
                List.of());
    }

    private static Axis uneven(Random random, int cells) {
        double[] edges = new double[cells + 1];
        for (int i = 0; i < cells; i++) {
            edges[i + 1] = edges[i] + 20 * Math.pow(100, random.nextDouble());
        }
        return Axis.ofEdges(edges);
    }

    private static double[] filled(int cells, double value) {
        double[] field = new double[cells];
        Arrays.fill(field, value);
        return field;
    }
}
