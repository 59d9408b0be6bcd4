package org.headfall.solver.linear;

import java.util.ArrayList;
import java.util.List;

/**
 * Multigrid that holds for any anisotropy, stretched cells and jumps of the coefficients: only every second row is kept
 * from level to level, and rows are smoothed by exact solves along them, first the rows kept, then those left out.
 *
 * <p>One V-cycle with one sweep before and the reverse sweep after. Because a sweep solves its rows exactly, the residual
 * after the first sweep vanishes on the rows left out, so that restriction is the residual of the kept rows alone, and
 * the second sweep recomputes the rows left out from the kept ones, so that interpolation enters only through the
 * Galerkin operator of {@link LineCoarsening}. Coarsening ends at one row, which is solved exactly.
 */
public final class LineMultigrid implements Preconditioner {
    private final FivePointMatrix matrix;
    private final WorkerTeam team;
    private final boolean transposed;
    private final List<NinePointOperator> operators = new ArrayList<>();
    private final List<LineFactors> factors = new ArrayList<>();
    private final List<LineCoarsening> coarsenings = new ArrayList<>();
    private final LineCycle[] levels;

    /**
     * Sets up a hierarchy.
     *
     * @param matrix the matrix
     * @param linesAlongColumns whether lines run along the grid's columns (to the north) rather than along its rows
     * @param team threads that share the work
     */
    public LineMultigrid(FivePointMatrix matrix, boolean linesAlongColumns, WorkerTeam team) {
        this.matrix = matrix;
        this.team = team;
        this.transposed = linesAlongColumns;
        int columns = transposed ? matrix.rows() : matrix.columns();
        int rows = transposed ? matrix.columns() : matrix.rows();
        addOperator(new NinePointOperator(columns, rows));
        while (rows > 1) {
            rows = (rows + 1) / 2;
            addOperator(new NinePointOperator(columns, rows));
            int fine = operators.size() - 2;
            coarsenings.add(new LineCoarsening(operators.get(fine), operators.get(fine + 1), factors.get(fine)));
        }
        levels = new LineCycle[operators.size()];
        for (int i = levels.length - 1; i >= 0; i--) {
            LineLevel level = new LineLevel(columns, operators.get(i).rows, i == 0);
            levels[i] = new LineCycle(level, i + 1 < levels.length ? levels[i + 1] : null, team);
        }
        diagonalChanged();
    }

    private void addOperator(NinePointOperator operator) {
        operators.add(operator);
        factors.add(new LineFactors(operator));
    }

    @Override
    public void diagonalChanged() {
        if (transposed) {
            operators.get(0).copyTransposed(matrix);
        } else {
            operators.get(0).copy(matrix);
        }
        for (int i = 0; i < levels.length; i++) {
            NinePointOperator operator = operators.get(i);
            LineFactors lineFactors = factors.get(i);
            LineLevel level = levels[i].level();
            team.split(operator.rows, 16, (from, to) -> {
                lineFactors.factorRows(from, to);
                level.copyRows(operator, lineFactors, from, to);
            });
            if (i + 1 < levels.length) {
                LineCoarsening coarsening = coarsenings.get(i);
                team.split(coarsening.rowsLeftOut(), 8, coarsening.interpolationTask);
                team.split(operators.get(i + 1).rows, 8, coarsening.productTask);
            }
        }
    }

    @Override
    public void apply(double[][] residuals, double[][] corrections, int count) {
        LineCycle finest = levels[0];
        finest.reserve(count);
        for (int l = 0; l < count; l++) {
            read(residuals[l], finest.rightHandSide(l));
        }
        finest.run(count);
        for (int l = 0; l < count; l++) {
            write(finest.solution(l), corrections[l]);
        }
    }

    private void read(double[] source, float[] target) {
        int first = levels[0].level().index(0, 0);
        if (transposed) {
            Transposition.transposeToSingle(source, matrix.columns(), target, first);
        } else {
            for (int k = 0; k < source.length; k++) {
                target[first + k] = (float) source[k];
            }
        }
    }

    private void write(float[] source, double[] target) {
        int first = levels[0].level().index(0, 0);
        if (transposed) {
            Transposition.transposeToDouble(source, first, matrix.rows(), target);
        } else {
            for (int k = 0; k < target.length; k++) {
                target[k] = source[first + k];
            }
        }
    }
}
