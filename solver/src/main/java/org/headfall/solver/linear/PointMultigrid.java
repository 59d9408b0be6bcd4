package org.headfall.solver.linear;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Quick multigrid for grids whose cells are about as strongly coupled both ways: every second column and row is kept, and
 * cells are smoothed one by one, in single precision.
 *
 * <p>Interpolation follows the coefficients: first across columns, then, from the Galerkin operator of that, across rows.
 * The coarse operators are the Galerkin products, with nine points. One V-cycle has one sweep before (red-black on the
 * finest grid, four colours below) and the reverse sweep after; on the coarsest grid it solves directly.
 */
final class PointMultigrid implements Preconditioner<HalfRowSystem> {
    /** Most cells on the grid that is solved directly. */
    private static final int COARSEST_CELLS = 400;
    /** Least number of rows worth a thread of their own in set-up. */
    private static final int ROW_GRAIN = 16;

    private final FivePointMatrix matrix;
    private final WorkerTeam team;
    private final FinestProduct finestProduct;
    private final int firstCoarseRows;
    private final List<GalerkinProduct> columnProducts = new ArrayList<>();
    private final List<GalerkinProduct> rowProducts = new ArrayList<>();
    private final List<PointInterpolation> columnInterpolations = new ArrayList<>();
    private final List<PointInterpolation> rowInterpolations = new ArrayList<>();
    private final List<PointLevel> levels = new ArrayList<>();
    private final List<PointTransfer> transfers = new ArrayList<>();
    private final CoarsestSolve coarsest;
    private final FinestCycle finest;
    private final HalfRowProduct product;
    private HalfRowWorkspace[] workspaces = {};

    /**
     * Sets up a hierarchy.
     *
     * @param matrix the matrix
     * @param team threads that share the work
     */
    PointMultigrid(FivePointMatrix matrix, WorkerTeam team) {
        this.matrix = matrix;
        this.team = team;
        FinestLevel finestLevel = new FinestLevel(matrix.columns(), matrix.rows());
        NinePointOperator operator = new NinePointOperator((matrix.columns() + 1) / 2, (matrix.rows() + 1) / 2);
        this.finestProduct = new FinestProduct(matrix, finestLevel, operator);
        this.firstCoarseRows = operator.rows;
        while (operator.columns * operator.rows > COARSEST_CELLS) {
            operator = addLevel(operator);
        }
        setValues();
        this.coarsest = new CoarsestSolve(operator);
        CoarseCorrection cycle = coarsest;
        for (int i = levels.size() - 1; i >= 0; i--) {
            cycle = new PointCycle(levels.get(i), transfers.get(i), cycle, team);
        }
        this.finest = new FinestCycle(finestLevel, cycle, team);
        this.product = new HalfRowProduct(matrix, finestLevel);
    }

    /** Adds a level for an operator and returns the next coarser one. */
    private NinePointOperator addLevel(NinePointOperator operator) {
        PointLevel level = new PointLevel(operator.columns, operator.rows);
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
        team.split(firstCoarseRows, ROW_GRAIN, finestProduct::setUp);
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
                for (int row = from; row < to; row++) {
                    level.copyRow(columnProduct.fine, row);
                    transfer.copyRow(columnProduct, rowProduct, row);
                }
            });
        }
    }

    @Override
    public void prepare() {
        product.update(team, ROW_GRAIN);
    }

    @Override
    public HalfRowSystem newSystem(int parts) {
        if (workspaces.length < parts) {
            workspaces = new HalfRowWorkspace[parts];
            Arrays.setAll(workspaces, part -> new HalfRowWorkspace(matrix.columns()));
        }
        return new HalfRowSystem(matrix, product, workspaces);
    }

    @Override
    public void apply(List<HalfRowSystem> systems, int count) {
        finest.run(systems, count);
    }
}
