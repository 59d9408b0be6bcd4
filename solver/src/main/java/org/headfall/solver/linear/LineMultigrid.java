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
 * Galerkin operator of {@link GalerkinProduct}. Coarsening ends at one row, which is solved exactly.
 */
final class LineMultigrid implements Preconditioner<DoubleSystem> {
    /** Least number of rows worth a thread of their own. */
    private static final int ROW_GRAIN = 8;

    private final FivePointMatrix matrix;
    private final WorkerTeam team;
    private final List<GalerkinProduct> products = new ArrayList<>();
    private final List<LineInterpolation> interpolations = new ArrayList<>();
    private final List<LineFactors> factors = new ArrayList<>();
    private final LineCycle[] levels;
    private List<DoubleSystem> systems = List.of();
    private int count;
    private final WorkerTeam.RangeTask readTask = this::readRows;
    private final WorkerTeam.RangeTask writeTask = this::writeRows;

    /**
     * Sets up a hierarchy.
     *
     * @param matrix the matrix
     * @param team threads that share the work
     */
    LineMultigrid(FivePointMatrix matrix, WorkerTeam team) {
        this.matrix = matrix;
        this.team = team;
        NinePointOperator finest = NinePointOperator.ofFivePoints(matrix.columns(), matrix.rows());
        factors.add(new LineFactors(finest));
        for (NinePointOperator fine = finest; fine.rows > 1; ) {
            GalerkinProduct product = products.isEmpty()
                    ? new GalerkinProduct(fine, true)
                    : new GalerkinProduct(products.get(products.size() - 1));
            products.add(product);
            interpolations.add(new LineInterpolation(product, factors.get(factors.size() - 1)));
            factors.add(new LineFactors(product.coarse));
            fine = product.coarse;
        }
        levels = new LineCycle[factors.size()];
        for (int i = levels.length - 1; i >= 0; i--) {
            LineLevel level = new LineLevel(factors.get(i).operator, factors.get(i), i == 0);
            levels[i] = new LineCycle(level, i + 1 < levels.length ? levels[i + 1] : null, team);
        }
        diagonalChanged();
    }

    @Override
    public void diagonalChanged() {
        NinePointOperator finest = factors.get(0).operator;
        finest.copy(matrix);
        team.split(finest.rows, 16, factors.get(0).rowTask);
        for (int i = 0; i < products.size(); i++) {
            team.split(interpolations.get(i).rowsLeftOut(), 8, interpolations.get(i).rowTask);
            team.split(products.get(i).coarse.rows, 8, products.get(i).rowTask);
            team.split(products.get(i).coarse.rows, 16, factors.get(i + 1).rowTask);
        }
    }

    @Override
    public void prepare() {
        // Products with the matrix read its diagonal itself.
    }

    @Override
    public DoubleSystem newSystem(int parts) {
        return new DoubleSystem(matrix);
    }

    @Override
    public void apply(List<DoubleSystem> newSystems, int newCount) {
        systems = newSystems;
        count = newCount;
        levels[0].reserve(count);
        team.split(matrix.rows(), ROW_GRAIN, readTask);
        levels[0].run(count);
        team.split(matrix.rows(), ROW_GRAIN, writeTask);
    }

    private void readRows(int from, int to) {
        int columns = matrix.columns();
        int place = factors.get(0).operator.index(0, from);
        for (int l = 0; l < count; l++) {
            double[] target = levels[0].rightHandSide(l);
            System.arraycopy(systems.get(l).residual, from * columns, target, place, (to - from) * columns);
        }
    }

    private void writeRows(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < count; l++) {
                DoubleSystem system = systems.get(l);
                system.rowSums[row] = writeRow(row, levels[0].solution(l), system.residual, system.correction);
            }
        }
    }

    /** Writes a row of the correction and returns its inner product with the residual. */
    private double writeRow(int row, double[] solution, double[] residual, double[] correction) {
        int columns = matrix.columns();
        int first = row * columns;
        int place = factors.get(0).operator.index(0, row);
        double sum = 0;
        for (int i = 0; i < columns; i++) {
            double value = solution[place + i];
            correction[first + i] = value;
            sum += value * residual[first + i];
        }
        return sum;
    }
}
