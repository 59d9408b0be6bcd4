package org.headfall.solver.flow;

import java.util.Arrays;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.linear.FivePointMatrix;
import org.headfall.solver.linear.LinearSolver;
import org.headfall.solver.linear.SolveReport;
import org.headfall.solver.linear.StoppingRule;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.CellWeights;

/**
 * Solution for one source while it is local: for a large Laplace variable drawdown has not come far. It is solved for on a
 * rectangle around the source, with zero around it. What would flow out of the rectangle is a part of the residual; the
 * rectangle is large enough if that stays below the tolerance of the solve.
 */
final class LocalSolve {

    /** Share of the grid above which a solve of the whole grid, by all threads, takes no longer. */
    private static final double LARGEST_SHARE = 0.3;

    private static final int FIRST_MARGIN = 6;

    /** Share of the tolerance that a cell of the rim may count for: there are many. */
    private static final double SHARE_OF_CELL = 1.0 / 32;

    private static final double WIDER = 1.25;

    private final CellWindow whole;
    private final CellWindow support;
    private final CellWeights source;
    private CellWindow window;
    private int margin;

    /** By how much the rectangle is wider than the source: it never shrinks, lest values of a wider one stay outside. */
    private int reach;

    private boolean local;
    private long solves;
    private long iterations;

    /**
     * Local solutions for a source.
     *
     * @param grid the grid
     * @param source weights of the cells that it takes from
     */
    LocalSolve(RectilinearGrid grid, CellWeights source) {
        whole = CellWindow.whole(grid);
        support = source.cells().length == 0 ? whole : CellWindow.around(grid, source.cells());
        this.source = source;
        window = whole;
        startAnew();
    }

    /** Begins a new series of ever smaller Laplace variables. */
    void startAnew() {
        window = support;
        margin = FIRST_MARGIN;
        reach = 0;
        local = true;
    }

    /** Takes the whole grid from now on. */
    void takeWhole() {
        window = whole;
        local = false;
    }

    /** Rectangle outside of which the last solution is zero. */
    CellWindow window() {
        return window;
    }

    long solves() {
        return solves;
    }

    long iterations() {
        return iterations;
    }

    /**
     * Solves, if the solution is still local.
     *
     * @param matrix matrix of the whole grid
     * @param stretch how many times farther drawdown has come than in the solution before
     * @param tolerance residual allowed as a share of the source
     * @param drawdown in: the solution before; out: the new one (d/m²)
     * @param former receives the solution before
     * @return whether it was local; if not, neither array has changed
     */
    boolean solve(FivePointMatrix matrix, double stretch, double tolerance, double[] drawdown, float[] former) {
        int wide = Math.max(reach, (int) Math.ceil(stretch * margin) + 1);
        while (local) {
            CellWindow tried = support.widened(wide);
            local = tried.cells() <= LARGEST_SHARE * whole.cells();
            if (local) {
                double[] part = tried.cut(drawdown);
                double[] right = solve(tried, matrix, tolerance, part);
                double allowed = tolerance * norm(right);
                if (outflow(tried, matrix, part) <= allowed) {
                    window.copy(drawdown, former);
                    tried.paste(part, drawdown);
                    window = tried;
                    reach = wide;
                    margin = marginOf(
                            tried.exceeding(SHARE_OF_CELL * allowed / largest(tried.cut(matrix.diagonal())), drawdown));
                    return true;
                }
                wide = (int) Math.ceil(WIDER * wide) + 1;
            }
        }
        window = whole;
        return false;
    }

    /** Solves in a rectangle; answers the right-hand side. */
    private double[] solve(CellWindow tried, FivePointMatrix matrix, double tolerance, double[] part) {
        double[] right = tried.spread(source);
        try (WorkerTeam alone = new WorkerTeam(1)) {
            LinearSolver solver = LinearSolver.forMatrix(matrixOf(tried, matrix), alone);
            SolveReport report =
                    solver.solve(right, part, StoppingRule.relative(tolerance).byRecursion());
            solves++;
            iterations += report.iterations();
        }
        return right;
    }

    /** What flows to the cells around stays in the diagonal. */
    private static FivePointMatrix matrixOf(CellWindow tried, FivePointMatrix matrix) {
        double[] east = tried.cut(matrix.east());
        double[] north = tried.cut(matrix.north());
        int columns = tried.columns();
        for (int row = 0; row < tried.rows(); row++) {
            east[row * columns + columns - 1] = 0;
        }
        Arrays.fill(north, north.length - columns, north.length, 0);
        return new FivePointMatrix(columns, tried.rows(), tried.cut(matrix.diagonal()), east, north);
    }

    /** Norm of what flows to the cells around. */
    private double outflow(CellWindow tried, FivePointMatrix matrix, double[] part) {
        int columns = tried.columns();
        int rows = tried.rows();
        int grid = whole.columns();
        int corner = tried.firstRow() * grid + tried.firstColumn();
        double sum = 0;
        for (int row = 0; row < rows; row++) {
            int first = corner + row * grid;
            if (tried.firstColumn() > 0) {
                sum += square(matrix.east()[first - 1] * part[row * columns]);
            }
            sum += square(matrix.east()[first + columns - 1] * part[row * columns + columns - 1]);
        }
        for (int column = 0; column < columns; column++) {
            int first = corner + column;
            if (tried.firstRow() > 0) {
                sum += square(matrix.north()[first - grid] * part[column]);
            }
            sum += square(matrix.north()[first + (rows - 1) * grid] * part[(rows - 1) * columns + column]);
        }
        return Math.sqrt(sum);
    }

    private int marginOf(CellWindow core) {
        int sideways = Math.max(support.firstColumn() - core.firstColumn(), core.endColumn() - support.endColumn());
        int along = Math.max(support.firstRow() - core.firstRow(), core.endRow() - support.endRow());
        return Math.max(0, Math.max(sideways, along));
    }

    private static double norm(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += square(value);
        }
        return Math.sqrt(sum);
    }

    private static double largest(double[] values) {
        double largest = 0;
        for (double value : values) {
            largest = Math.max(largest, value);
        }
        return largest;
    }

    private static double square(double value) {
        return value * value;
    }
}
