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
        if (allFinite(values)) {
            return;
        }
        for (int k = 0; k < values.length; k++) {
            if (!Double.isFinite(values[k])) {
                throw new IllegalArgumentException(name + " of " + matrix.describeCell(k) + " is " + values[k]);
            }
        }
    }

    /** Zero times a number that is not finite is none; four sums, which do not wait for each other. */
    private static boolean allFinite(double[] values) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int k = 0;
        for (; k < values.length - 3; k += 4) {
            a += values[k] * 0;
            b += values[k + 1] * 0;
            c += values[k + 2] * 0;
            d += values[k + 3] * 0;
        }
        for (; k < values.length; k++) {
            a += values[k] * 0;
        }
        return a + b + c + d == 0;
    }
}
