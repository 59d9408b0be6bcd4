package org.headfall.solver.linear;

/** Checks on what is given to a solver, before any work. */
final class SystemChecks {
    private SystemChecks() {}

    static void require(FivePointMatrix matrix, double[][] rightHandSides, double[][] solutions) {
        if (rightHandSides.length != solutions.length) {
            throw new IllegalArgumentException(
                    rightHandSides.length + " right-hand sides but " + solutions.length + " solutions");
        }
        for (int l = 0; l < rightHandSides.length; l++) {
            require(matrix, rightHandSides[l], solutions[l]);
        }
    }

    static void require(FivePointMatrix matrix, double[] rightHandSide, double[] solution) {
        requireFinite(matrix, "right-hand side", rightHandSide);
        requireFinite(matrix, "starting guess", solution);
    }

    private static void requireFinite(FivePointMatrix matrix, String name, double[] values) {
        if (values.length != matrix.cells()) {
            throw new IllegalArgumentException(
                    name + " has " + values.length + " values, the matrix has " + matrix.cells() + " cells");
        }
        double sum = 0;
        for (double value : values) {
            sum += value * 0;
        }
        for (int k = 0; sum != 0 && k < values.length; k++) {
            if (!Double.isFinite(values[k])) {
                throw new IllegalArgumentException(name + " of " + matrix.describeCell(k) + " is " + values[k]);
            }
        }
    }
}
