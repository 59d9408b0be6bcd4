package org.headfall.solver.linear;

import java.util.Arrays;
import org.ejml.data.DMatrixSparseTriplet;

/** Direct solve on the coarsest grid of a hierarchy. */
final class CoarsestSolve implements CoarseCorrection {
    private final NinePointOperator operator;
    private SparseCholesky factors;
    private final float[] cells;
    private HalfRows[] rightHandSides = {};
    private HalfRows[] solutions = {};

    /** Factors an operator with few cells. */
    CoarsestSolve(NinePointOperator operator) {
        this.operator = operator;
        this.cells = new float[operator.columns];
        this.factors = factor(operator);
    }

    void valuesChanged() {
        factors = factor(operator);
    }

    private static SparseCholesky factor(NinePointOperator operator) {
        int cells = operator.columns * operator.rows;
        int first = operator.index(0, 0);
        DMatrixSparseTriplet entries = new DMatrixSparseTriplet(cells, cells, 9 * cells);
        for (int k = 0; k < cells; k++) {
            entries.addItem(k, k, operator.diagonal[first + k]);
            addCoupling(entries, k, k + 1, operator.east[first + k]);
            addCoupling(entries, k, k + operator.columns, operator.north[first + k]);
            addCoupling(entries, k, k + operator.columns + 1, operator.northEast[first + k]);
            addCoupling(entries, k, k + operator.columns - 1, operator.northWest[first + k]);
        }
        return new SparseCholesky(entries);
    }

    private static void addCoupling(DMatrixSparseTriplet entries, int cell, int neighbour, double coupling) {
        if (coupling != 0) {
            entries.addItem(cell, neighbour, -coupling);
            entries.addItem(neighbour, cell, -coupling);
        }
    }

    @Override
    public void reserve(int systems) {
        int had = rightHandSides.length;
        if (had < systems) {
            rightHandSides = Arrays.copyOf(rightHandSides, systems);
            solutions = Arrays.copyOf(solutions, systems);
            for (int l = had; l < systems; l++) {
                rightHandSides[l] = new HalfRows(operator.columns, operator.rows);
                solutions[l] = new HalfRows(operator.columns, operator.rows);
            }
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
    public void run(int systems) {
        for (int l = 0; l < systems; l++) {
            double[] input = factors.rightHandSide();
            for (int row = 0; row < operator.rows; row++) {
                rightHandSides[l].join(row, cells);
                for (int column = 0; column < operator.columns; column++) {
                    input[row * operator.columns + column] = cells[column];
                }
            }
            double[] output = factors.solve();
            for (int row = 0; row < operator.rows; row++) {
                for (int column = 0; column < operator.columns; column++) {
                    cells[column] = (float) output[row * operator.columns + column];
                }
                solutions[l].split(row, cells);
            }
        }
    }
}
