package org.headfall.solver.linear;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Quick multigrid for grids whose cells are about as strongly coupled both ways: every second column and row is kept, and
 * cells are smoothed one by one, in single precision.
 *
 * <p>Interpolation follows the coefficients: first across columns, then, from the Galerkin operator of that, across rows.
 * The coarse operators are the Galerkin products, with nine points. One V-cycle has one sweep before (red-black on the
 * finest grid, four colours below) and the reverse sweep after; on the coarsest grid it solves directly.
 */
public final class PointMultigrid implements Preconditioner {
    /** Most cells on the grid that is solved directly. */
    private static final int COARSEST_CELLS = 400;

    private static final int ROW_GRAIN = 16;

    private final FivePointMatrix matrix;
    private final WorkerTeam team;
    private final NinePointOperator finestOperator;
    private final List<GalerkinProduct> columnProducts = new ArrayList<>();
    private final List<GalerkinProduct> rowProducts = new ArrayList<>();
    private final List<PointInterpolation> columnInterpolations = new ArrayList<>();
    private final List<PointInterpolation> rowInterpolations = new ArrayList<>();
    private final List<PointLevel> levels = new ArrayList<>();
    private final List<PointTransfer> transfers = new ArrayList<>();
    private final CoarsestSolve coarsest;
    private final PointCycle finest;
    private double[][] residuals = {};
    private double[][] corrections = {};
    private int count;
    private final WorkerTeam.RangeTask readTask = this::readRows;
    private final WorkerTeam.RangeTask writeTask = this::writeRows;

    /**
     * Sets up a hierarchy.
     *
     * @param matrix the matrix
     * @param team threads that share the work
     */
    public PointMultigrid(FivePointMatrix matrix, WorkerTeam team) {
        this.matrix = matrix;
        this.team = team;
        this.finestOperator = new NinePointOperator(matrix.columns(), matrix.rows());
        NinePointOperator operator = finestOperator;
        do {
            operator = addLevel(operator);
        } while (operator.columns * operator.rows > COARSEST_CELLS);
        setValues();
        this.coarsest = new CoarsestSolve(operator);
        @Nullable PointCycle cycle = null;
        for (int i = levels.size() - 1; i >= 0; i--) {
            cycle = new PointCycle(levels.get(i), transfers.get(i), cycle, coarsest, team);
        }
        this.finest = Objects.requireNonNull(cycle);
    }

    /** Adds a level for an operator and returns the next coarser one. */
    private NinePointOperator addLevel(NinePointOperator operator) {
        PointLevel level = new PointLevel(operator.columns, operator.rows, levels.isEmpty());
        GalerkinProduct columnProduct = new GalerkinProduct(operator, false);
        GalerkinProduct rowProduct = new GalerkinProduct(columnProduct.coarse, true);
        levels.add(level);
        transfers.add(new PointTransfer(level));
        columnProducts.add(columnProduct);
        rowProducts.add(rowProduct);
        columnInterpolations.add(new PointInterpolation(columnProduct, false));
        rowInterpolations.add(new PointInterpolation(rowProduct, true));
        return rowProduct.coarse;
    }

    @Override
    public void diagonalChanged() {
        setValues();
        coarsest.valuesChanged();
    }

    private void setValues() {
        finestOperator.copy(matrix);
        for (int i = 0; i < levels.size(); i++) {
            GalerkinProduct columnProduct = columnProducts.get(i);
            GalerkinProduct rowProduct = rowProducts.get(i);
            PointLevel level = levels.get(i);
            PointTransfer transfer = transfers.get(i);
            team.split(level.rows, ROW_GRAIN, columnInterpolations.get(i).rowTask);
            team.split(level.rows, ROW_GRAIN, columnProduct.rowTask);
            team.split(level.rows, ROW_GRAIN, rowInterpolations.get(i).rowTask);
            team.split(rowProduct.coarse.rows, ROW_GRAIN, rowProduct.rowTask);
            team.split(level.rows, ROW_GRAIN, (from, to) -> {
                level.copyRows(columnProduct.fine, from, to);
                transfer.copyRows(columnProduct, rowProduct, from, to);
            });
        }
    }

    @Override
    public void apply(double[][] newResiduals, double[][] newCorrections, int newCount) {
        residuals = newResiduals;
        corrections = newCorrections;
        count = newCount;
        finest.reserve(count);
        team.split(matrix.rows(), ROW_GRAIN, readTask);
        finest.run(count);
        team.split(matrix.rows(), ROW_GRAIN, writeTask);
    }

    private void readRows(int from, int to) {
        int columns = matrix.columns();
        int pad = finestOperator.index(0, 0);
        for (int l = 0; l < count; l++) {
            double[] source = residuals[l];
            float[] target = finest.rightHandSide(l);
            for (int k = from * columns; k < to * columns; k++) {
                target[pad + k] = (float) source[k];
            }
        }
    }

    private void writeRows(int from, int to) {
        int columns = matrix.columns();
        int pad = finestOperator.index(0, 0);
        for (int l = 0; l < count; l++) {
            float[] source = finest.solution(l);
            double[] target = corrections[l];
            for (int k = from * columns; k < to * columns; k++) {
                target[k] = source[pad + k];
            }
        }
    }
}
