package org.headfall.solver.linear.multigrid;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.solver.linear.FivePointMatrix;
import org.headfall.solver.linear.Preconditioner;

/**
 * One V-cycle of multigrid with zebra lines along y and semicoarsening in x, as a preconditioner. After the odd columns
 * have been solved their residual is zero, and solving them again after the coarse correction is their interpolation,
 * so neither needs a transfer of its own. The order even, odd, coarse, odd, even makes the cycle symmetric. The
 * coarsest level is a single column, solved exactly.
 */
public final class LineMultigrid implements Preconditioner {

    private final FivePointMatrix matrix;
    private final List<Level> levels = new ArrayList<>();
    private final List<Coarsening> coarsenings = new ArrayList<>();

    /**
     * Hierarchy for a matrix, with the values it has now.
     *
     * @param matrix the matrix
     */
    public LineMultigrid(FivePointMatrix matrix) {
        this.matrix = matrix;
        Level level = new Level(matrix.columns(), matrix.rows(), true);
        levels.add(level);
        while (level.columns > 1) {
            Level coarse = new Level((level.columns + 1) / 2, level.rows, false);
            coarsenings.add(new Coarsening(level, coarse));
            levels.add(coarse);
            level = coarse;
        }
        takeValues();
    }

    @Override
    public void diagonalChanged() {
        takeValues();
    }

    private void takeValues() {
        Level finest = levels.get(0);
        double[] east = matrix.east();
        double[] north = matrix.north();
        System.arraycopy(matrix.diagonal(), 0, finest.diagonal, 0, finest.diagonal.length);
        for (int cell = 0; cell < east.length; cell++) {
            finest.east[cell] = -east[cell];
            finest.north[cell] = -north[cell];
        }
        finest.factorColumns();
        for (int depth = 0; depth < coarsenings.size(); depth++) {
            coarsenings.get(depth).compute();
            levels.get(depth + 1).factorColumns();
        }
    }

    @Override
    public void apply(double[][] residuals, double[][] corrections, int count) {
        for (int i = 0; i < count; i++) {
            cycle(0, residuals[i], corrections[i]);
        }
    }

    private void cycle(int depth, double[] right, double[] x) {
        Level level = levels.get(depth);
        System.arraycopy(right, 0, x, 0, x.length);
        level.solveColumns(0, x);
        if (level.columns == 1) {
            return;
        }
        solveOddColumns(level, right, x);
        correct(depth, right, x);
        solveOddColumns(level, right, x);
        level.subtractNeighbours(0, right, x, x);
        level.solveColumns(0, x);
    }

    private static void solveOddColumns(Level level, double[] right, double[] x) {
        level.subtractNeighbours(1, right, x, x);
        level.solveColumns(1, x);
    }

    /** Residual of the even columns to the coarse level, its solution back. */
    private void correct(int depth, double[] right, double[] x) {
        Level level = levels.get(depth);
        Level coarse = levels.get(depth + 1);
        double[] residual = level.residual;
        level.subtractNeighbours(0, right, x, residual);
        level.subtractOwnColumn(x, residual);
        for (int row = 0; row < level.rows; row++) {
            for (int column = 0; column < coarse.columns; column++) {
                coarse.restricted[row * coarse.columns + column] = residual[row * level.columns + 2 * column];
            }
        }
        cycle(depth + 1, coarse.restricted, coarse.solution);
        for (int row = 0; row < level.rows; row++) {
            for (int column = 0; column < coarse.columns; column++) {
                x[row * level.columns + 2 * column] += coarse.solution[row * coarse.columns + column];
            }
        }
    }

    @Override
    public String toString() {
        return "line multigrid of " + levels.size() + " levels, finest " + matrix.columns() + " x " + matrix.rows()
                + ", values on all levels "
                + levels.stream().mapToInt(l -> l.diagonal.length).sum() + " "
                + Arrays.toString(levels.stream().mapToInt(l -> l.columns).toArray());
    }
}
