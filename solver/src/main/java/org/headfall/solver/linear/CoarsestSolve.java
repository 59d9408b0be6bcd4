package org.headfall.solver.linear;

import java.util.Arrays;
import org.ejml.data.DMatrixSparseTriplet;

/** Direct solve on the coarsest grid of a hierarchy. */
final class CoarsestSolve implements CoarseCorrection {
    private final NinePointOperator operator;
    private SparseCholesky factors;
    private float[][] rightHandSides = {};
    private float[][] solutions = {};

    /** Factors an operator with few cells. */
    CoarsestSolve(NinePointOperator operator) {
        this.operator = operator;
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
                rightHandSides[l] = new float[operator.diagonal.length];
                solutions[l] = new float[operator.diagonal.length];
            }
        }
    }

    @Override
    public float[] rightHandSide(int system) {
        return rightHandSides[system];
    }

    @Override
    public float[] solution(int system) {
        return solutions[system];
    }

    @Override
    public void run(int systems) {
        int first = operator.index(0, 0);
        for (int l = 0; l < systems; l++) {
            double[] input = factors.rightHandSide();
            for (int k = 0; k < input.length; k++) {
                input[k] = rightHandSides[l][first + k];
            }
            double[] output = factors.solve();
            for (int k = 0; k < output.length; k++) {
                solutions[l][first + k] = (float) output[k];
            }
        }
    }
}
