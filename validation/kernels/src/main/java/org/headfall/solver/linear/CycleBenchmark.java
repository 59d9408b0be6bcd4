package org.headfall.solver.linear;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.headfall.validation.benchmark.BenchmarkProblem;
import org.headfall.validation.benchmark.Variant;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Setup;

/** The parts of an iteration on the finest grid, and the cycle as a whole: it less the walks is what coarse levels take. */
public class CycleBenchmark extends SquareBenchmark {

    private RowParts parts;
    private PointMultigrid multigrid;
    private FinestCycle walks;
    private List<HalfRowSystem> vectors;

    /** Sets up multigrid, and vectors of random numbers of the size that scaled residuals have. */
    @Setup
    public void setUp() {
        BenchmarkProblem problem = begin(Variant.PLAIN);
        FivePointMatrix matrix = problem.matrix();
        parts = RowParts.of(n, threads, 1);
        multigrid = new PointMultigrid(matrix, team);
        multigrid.prepare();
        walks = walksAlone(matrix);
        vectors = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(1);
        for (int system = 0; system < systems; system++) {
            HalfRowSystem made = multigrid.newSystem(parts.parts());
            double[] rightHandSide = random.doubles((long) n * n, -1, 1).toArray();
            made.assign(rightHandSide, new double[rightHandSide.length]);
            for (int row = 0; row < n; row++) {
                made.startRow(row, 0);
            }
            made.start();
            for (int row = 0; row < n; row++) {
                made.settleRow(row, 0);
            }
            vectors.add(made);
        }
        multigrid.apply(vectors, systems);
        forRows((system, row, part) -> system.combineRow(row, 0));
    }

    private FinestCycle walksAlone(FivePointMatrix matrix) {
        FinestLevel level = new FinestLevel(n, n);
        NinePointOperator coarse = new NinePointOperator((n + 1) / 2, (n + 1) / 2);
        new FinestProduct(matrix, level, coarse).setUp(0, coarse.rows);
        return new FinestCycle(level, new NothingBelow(coarse.columns, coarse.rows), team);
    }

    /** Product of the matrix with the directions, and their inner products. */
    @Benchmark
    public void product(CellCount count) {
        forRows(KrylovSystem::curvatureRow);
        count.perCell += (long) n * n * systems;
    }

    /** New directions. */
    @Benchmark
    public void direction(CellCount count) {
        forRows((system, row, part) -> system.combineRow(row, 0.5));
        count.perCell += (long) n * n * systems;
    }

    /** A step of answers and residuals, so short that they stay as they are, and norms of the residuals. */
    @Benchmark
    public void update(CellCount count) {
        forRows((system, row, part) -> system.rowSums[row] = system.stepRow(row, part, 1e-30));
        count.perCell += (long) n * n * systems;
    }

    /** Both walks over the finest grid, with nothing below it. */
    @Benchmark
    public void finestWalks(CellCount count) {
        walks.run(vectors, systems);
        count.perCell += (long) n * n * systems;
    }

    /** The whole cycle. */
    @Benchmark
    public void wholeCycle(CellCount count) {
        multigrid.apply(vectors, systems);
        count.perCell += (long) n * n * systems;
    }

    private interface RowStep {
        void apply(HalfRowSystem system, int row, int part);
    }

    /** As conjugate gradients go over rows: system by system within a row. */
    private void forRows(RowStep step) {
        team.split(parts.parts(), 1, (fromPart, toPart) -> {
            for (int part = fromPart; part < toPart; part++) {
                for (int row = parts.first(part); row < parts.first(part + 1); row++) {
                    for (HalfRowSystem system : vectors) {
                        step.apply(system, row, part);
                    }
                }
            }
        });
    }

    /** A coarse grid that corrects nothing. */
    private static final class NothingBelow implements CoarseCorrection {
        private final int columns;
        private final int rows;
        private HalfRows[] rightHandSides = {};
        private HalfRows[] solutions = {};

        NothingBelow(int columns, int rows) {
            this.columns = columns;
            this.rows = rows;
        }

        @Override
        public void reserve(int systems) {
            if (rightHandSides.length < systems) {
                rightHandSides = new HalfRows[systems];
                solutions = new HalfRows[systems];
                Arrays.setAll(rightHandSides, system -> new HalfRows(columns, rows));
                Arrays.setAll(solutions, system -> new HalfRows(columns, rows));
            }
        }

        @Override
        public HalfRows rightHandSide(int system) {
            return rightHandSides[system];
        }

        @Override
        public HalfRows solution(int system) {
            return solutions[system];
        }

        @Override
        public void run(int systems) {}
    }
}
