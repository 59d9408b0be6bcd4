package org.headfall.solver.linear;

import java.util.Random;

/** Matrices and vectors for the tests of this package, from seeds. */
final class TestMatrices {
    private TestMatrices() {}

    /** Log-normal couplings of the given spread, tied down at the first cell of each row. */
    static FivePointMatrix random(int columns, int rows, double spread, long seed) {
        Random random = new Random(seed);
        int cells = columns * rows;
        double[] east = new double[cells];
        double[] north = new double[cells];
        double[] tie = new double[cells];
        for (int k = 0; k < cells; k++) {
            east[k] = (k + 1) % columns == 0 ? 0 : Math.exp(spread * random.nextGaussian());
            north[k] = k + columns >= cells ? 0 : Math.exp(spread * random.nextGaussian());
            tie[k] = k % columns == 0 ? 1 : 0;
        }
        return fromCouplings(columns, rows, east, north, tie);
    }

    /** Like {@link #random} with a spread of 0.5, couplings along x multiplied by a factor; tied at the first cell. */
    static FivePointMatrix anisotropic(int columns, int rows, double factor, long seed) {
        FivePointMatrix base = random(columns, rows, 0.5, seed);
        double[] east = base.east();
        double[] tie = new double[base.cells()];
        tie[0] = 1;
        for (int k = 0; k < east.length; k++) {
            east[k] *= factor;
        }
        return fromCouplings(columns, rows, east, base.north(), tie);
    }

    /** Conductances of a rectilinear grid of 1 km cells, refined to 25 m around three columns and rows; tied at the west. */
    static FivePointMatrix refined(int columns, int rows) {
        double[] widthX = refinedWidths(columns);
        double[] widthY = refinedWidths(rows);
        int cells = columns * rows;
        double[] east = new double[cells];
        double[] north = new double[cells];
        double[] tie = new double[cells];
        for (int k = 0; k < cells; k++) {
            int i = k % columns;
            int j = k / columns;
            east[k] = i + 1 < columns ? 2 * widthY[j] / (widthX[i] + widthX[i + 1]) : 0;
            north[k] = j + 1 < rows ? 2 * widthX[i] / (widthY[j] + widthY[j + 1]) : 0;
            tie[k] = i == 0 ? 2 * widthY[j] / widthX[0] : 0;
        }
        return fromCouplings(columns, rows, east, north, tie);
    }

    private static double[] refinedWidths(int cells) {
        double[] widths = new double[cells];
        for (int i = 0; i < cells; i++) {
            int distance =
                    Math.min(Math.abs(i - cells / 5), Math.min(Math.abs(i - cells / 2), Math.abs(i - cells / 2 - 9)));
            widths[i] = Math.min(1000, 25 * Math.pow(1.4, distance));
        }
        return widths;
    }

    /** The matrix of couplings and ties: diagonal = ties + couplings, or 1 for a cell with neither. */
    static FivePointMatrix fromCouplings(int columns, int rows, double[] east, double[] north, double[] tie) {
        double[] diagonal = tie.clone();
        for (int k = 0; k < diagonal.length; k++) {
            diagonal[k] += east[k] + north[k] + (k % columns > 0 ? east[k - 1] : 0);
            diagonal[k] += k >= columns ? north[k - columns] : 0;
            diagonal[k] = diagonal[k] == 0 ? 1 : diagonal[k];
        }
        return new FivePointMatrix(columns, rows, diagonal, east, north);
    }

    /** A third of the cells dead at random, which also cuts off islands; every live cell has a little storage. */
    static FivePointMatrix withDeadCells(int columns, int rows, long seed) {
        Random random = new Random(seed);
        int cells = columns * rows;
        boolean[] dead = new boolean[cells];
        for (int k = 0; k < cells; k++) {
            dead[k] = random.nextInt(3) == 0;
        }
        double[] east = new double[cells];
        double[] north = new double[cells];
        double[] tie = new double[cells];
        for (int k = 0; k < cells; k++) {
            boolean toEast = (k + 1) % columns != 0 && !dead[k] && !dead[k + 1];
            boolean toNorth = k + columns < cells && !dead[k] && !dead[k + columns];
            east[k] = toEast ? Math.exp(random.nextGaussian()) : 0;
            north[k] = toNorth ? Math.exp(random.nextGaussian()) : 0;
            tie[k] = dead[k] ? 0 : 1e-3;
        }
        return fromCouplings(columns, rows, east, north, tie);
    }

    /** Like {@link #random}, with nothing that ties it down. */
    static FivePointMatrix loose(int columns, int rows, long seed) {
        FivePointMatrix tied = random(columns, rows, 1, seed);
        return fromCouplings(columns, rows, tied.east(), tied.north(), new double[tied.cells()]);
    }

    static double[] randomVector(int length, long seed) {
        Random random = new Random(seed);
        double[] values = new double[length];
        for (int k = 0; k < length; k++) {
            values[k] = random.nextGaussian();
        }
        return values;
    }

    static double norm(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value * value;
        }
        return Math.sqrt(sum);
    }

    static double residualNorm(FivePointMatrix matrix, double[] rightHandSide, double[] solution) {
        double[] residual = new double[matrix.cells()];
        matrix.residual(rightHandSide, solution, residual);
        return norm(residual);
    }
}
