package org.headfall.solver.flow;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.CellWeights;
import org.jspecify.annotations.Nullable;

/**
 * Drawdown of all cells by a unit source at every place in Laplace space, for one real value of the Laplace
 * variable after the other. The matrix is that of an implicit stage whose coefficient is the inverse of the shift.
 */
final class ShiftedSolves {

    /** Sources solved for side by side: more take memory and are no faster. */
    private static final int LANES = 6;

    private static final int TILE = 1024;

    /** Cells of which the products are added up by one thread. */
    private static final int BLOCK = 8 * TILE;

    private final List<CellWeights> sources;
    private final double tolerance;
    private final WorkerTeam team;
    private final StageMatrix matrix;
    private final double[] storage;
    private final @Nullable BedRelaxation bed;
    private final double[][] drawdown;
    private final float[][] former;
    private final double[][] right;
    private final double[] weight;
    private int solved;

    ShiftedSolves(FlowProblem problem, List<CellWeights> sources, WorkerTeam team) {
        this(problem, sources, StageMatrix.TRANSFER_TOLERANCE, team);
    }

    /** Solves that leave residuals of a share of the sources. */
    ShiftedSolves(FlowProblem problem, List<CellWeights> sources, double tolerance, WorkerTeam team) {
        this.sources = sources;
        this.tolerance = tolerance;
        this.team = team;
        FlowEquation equation = new FlowEquation(problem);
        int cells = equation.size();
        storage = equation.storage().clone();
        bed = BedRelaxation.of(problem);
        if (bed != null) {
            bed.addFastStorage(storage);
        }
        matrix = StageMatrix.withOneSolver(equation, storage, bed, team);
        drawdown = new double[sources.size()][cells];
        former = new float[sources.size()][cells];
        right = new double[Math.min(LANES, sources.size())][cells];
        weight = new double[cells];
    }

    long solves() {
        return matrix.solves();
    }

    long iterations() {
        return matrix.iterations();
    }

    /** Runs a task for each of some sources, shared among threads. */
    void forSources(int count, IntConsumer task) {
        team.split(count, 1, (from, to) -> IntStream.range(from, to).forEach(task));
    }

    /** Loops over all cells, by the same threads as the solver. */
    CellLoops loops() {
        return matrix.loops();
    }

    /** Solves for all sources. */
    void solve(double shift) {
        matrix.prepare(1 / shift);
        solveAll();
        matrix.loops().run((from, to) -> {
            System.arraycopy(storage, from, weight, from, to - from);
            if (bed != null) {
                bed.addStorage(shift, weight, from, to);
            }
        });
    }

    /** Solves for all sources in the steady state, the limit of no shift. */
    void solveSteady() {
        matrix.prepareSteady();
        solveAll();
    }

    private void solveAll() {
        for (int first = 0; first < sources.size(); first += LANES) {
            int last = Math.min(sources.size(), first + LANES);
            for (int source = first; source < last; source++) {
                guess(drawdown[source], former[source]);
                Arrays.fill(right[source - first], 0);
                sources.get(source).add(1, right[source - first]);
            }
            matrix.solveTransfers(
                    Arrays.copyOf(right, last - first), Arrays.copyOfRange(drawdown, first, last), tolerance);
        }
        solved++;
    }

    /** Drawdown is nearly straight over the logarithm of the shift: the next guess continues the last two solutions. */
    private void guess(double[] last, float[] beforeLast) {
        matrix.loops().run((from, to) -> {
            for (int cell = from; cell < to; cell++) {
                double now = last[cell];
                last[cell] = solved < 2 ? now : 2 * now - beforeLast[cell];
                beforeLast[cell] = (float) now;
            }
        });
    }

    /** Solution for a source; changed by the next solve. */
    double[] drawdown(int source) {
        return drawdown[source];
    }

    /**
     * Adds the products {@code h_i^T W h_j}, tile by tile so that all solutions of a tile stay in the cache, and block of tiles
     * by block in order, so that they are the same bit for bit for any number of threads.
     *
     * @param causes number of sources, from the first, whose products with all others are wanted
     * @param falls receives the products
     * @param shift number of the shift in the rows
     */
    void addFalls(int causes, PairValues falls, int shift) {
        double[][] sums = new double[(weight.length + BLOCK - 1) / BLOCK][];
        team.split(sums.length, 1, (first, end) -> {
            for (int block = first; block < end; block++) {
                sums[block] = products(causes, block * BLOCK, Math.min(weight.length, (block + 1) * BLOCK));
            }
        });
        for (double[] ofBlock : sums) {
            int pair = 0;
            for (int i = 0; i < drawdown.length; i++) {
                falls.of(i, i)[shift] += ofBlock[pair++];
                for (int j = 0; j < Math.min(i, causes); j++) {
                    falls.of(i, j)[shift] += ofBlock[pair++];
                }
            }
        }
    }

    /** Products over some cells, for every source with itself and with the causes before it. */
    private double[] products(int causes, int firstCell, int endCell) {
        double[] sums = new double[drawdown.length * (causes + 1)];
        double[] weighted = new double[TILE];
        for (int from = firstCell; from < endCell; from += TILE) {
            int length = Math.min(TILE, endCell - from);
            int pair = 0;
            for (int i = 0; i < drawdown.length; i++) {
                for (int k = 0; k < length; k++) {
                    weighted[k] = weight[from + k] * drawdown[i][from + k];
                }
                sums[pair++] += product(weighted, drawdown[i], from, length);
                for (int j = 0; j < Math.min(i, causes); j++) {
                    sums[pair++] += product(weighted, drawdown[j], from, length);
                }
            }
        }
        return sums;
    }

    /** In four sums that do not wait for each other. */
    private static double product(double[] weighted, double[] values, int from, int length) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int k = 0;
        for (; k < length - 3; k += 4) {
            a += weighted[k] * values[from + k];
            b += weighted[k + 1] * values[from + k + 1];
            c += weighted[k + 2] * values[from + k + 2];
            d += weighted[k + 3] * values[from + k + 3];
        }
        for (; k < length; k++) {
            a += weighted[k] * values[from + k];
        }
        return (a + b) + (c + d);
    }
}
