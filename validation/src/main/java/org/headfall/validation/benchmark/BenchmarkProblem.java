package org.headfall.validation.benchmark;

import org.headfall.solver.linear.FivePointMatrix;

/**
 * One system of the benchmark: drawdown (m) after one implicit step, or in steady state, of 16 bores that take 2,000 m3/d
 * each. The west side is held at the outer face; the other sides are closed.
 */
public final class BenchmarkProblem {
    private static final double STORATIVITY = 1e-4;
    private static final double RATE = 2000;
    private static final int BORES_A_SIDE = 4;

    private final int columns;
    private final int rows;
    private final Variant variant;
    private final double[] transmissivity;
    private final double[] widthX;
    private final double[] widthY;
    private final double[] flowDiagonal;
    private final double[] storage;
    private final FivePointMatrix matrix;

    /**
     * Makes a steady system.
     *
     * @param columns number of cells to the east
     * @param rows number of cells to the north
     * @param variant what is changed
     */
    public BenchmarkProblem(int columns, int rows, Variant variant) {
        this.columns = columns;
        this.rows = rows;
        this.variant = variant;
        this.transmissivity = transmissivity();
        this.widthX = widths(columns);
        this.widthY = widths(rows);
        this.storage = storage();
        double[] east = eastConductance();
        double[] north = northConductance();
        this.flowDiagonal = flowDiagonal(east, north);
        this.matrix = new FivePointMatrix(columns, rows, flowDiagonal.clone(), east, north);
    }

    /** Returns the matrix, for the step set last. */
    public FivePointMatrix matrix() {
        return matrix;
    }

    /** Returns T (m2/d) of cell (i, j). */
    double transmissivity(int i, int j) {
        return transmissivity[j * columns + i];
    }

    /**
     * Sets the time step of the matrix.
     *
     * @param days length of the step (d); infinite for the steady state
     */
    public void setStep(double days) {
        matrix.shiftDiagonal(flowDiagonal, 1 / days, storage);
    }

    private double[] transmissivity() {
        double[] values = new TransmissivityField().onGrid(columns, rows);
        if (variant == Variant.NOISE) {
            SplitMix64 random = new SplitMix64(77);
            for (int k = 0; k < values.length; k++) {
                double sum = 0;
                for (int n = 0; n < 12; n++) {
                    sum += random.nextUniform();
                }
                values[k] *= Math.exp(sum - 6);
            }
        }
        for (int k = 0; k < values.length && variant == Variant.BLOCKS; k++) {
            boolean odd = (k % columns / 16 + k / columns / 16) % 2 == 1;
            values[k] *= odd ? 1e-6 : 1;
        }
        return values;
    }

    private double[] widths(int cells) {
        double[] widths = new double[cells];
        for (int i = 0; i < cells; i++) {
            int distance = cells;
            for (int a = 0; a < BORES_A_SIDE; a++) {
                distance = Math.min(distance, Math.abs(i - boreIndex(a, cells)));
            }
            widths[i] = variant == Variant.STRETCHED ? Math.min(5000, Math.pow(1.2, distance)) : 100;
        }
        return widths;
    }

    private int boreIndex(int a, int cells) {
        return variant == Variant.STRETCHED ? cells / 8 + a * cells / 4 : cells / 2 - 3 * cells / 32 + a * cells / 16;
    }

    private double factorX() {
        return variant == Variant.ANISOTROPIC ? 10 : variant == Variant.ANISOTROPIC_NORTH ? 0.1 : 1;
    }

    private double factorY() {
        return 1 / factorX();
    }

    private double[] eastConductance() {
        double[] values = new double[transmissivity.length];
        for (int k = 0; k < values.length; k++) {
            int i = k % columns;
            if (i + 1 < columns) {
                double resistance = widthX[i] / (2 * transmissivity[k]) + widthX[i + 1] / (2 * transmissivity[k + 1]);
                values[k] = factorX() * widthY[k / columns] / resistance;
            }
        }
        return values;
    }

    private double[] northConductance() {
        double[] values = new double[transmissivity.length];
        for (int k = 0; k + columns < values.length; k++) {
            int j = k / columns;
            double resistance = widthY[j] / (2 * transmissivity[k]) + widthY[j + 1] / (2 * transmissivity[k + columns]);
            values[k] = factorY() * widthX[k % columns] / resistance;
        }
        return values;
    }

    private double[] flowDiagonal(double[] east, double[] north) {
        double[] values = new double[transmissivity.length];
        for (int k = 0; k < values.length; k++) {
            int i = k % columns;
            double west = factorX() * widthY[k / columns] * 2 * transmissivity[k] / widthX[0];
            values[k] = east[k] + north[k] + (i > 0 ? east[k - 1] : west) + (k >= columns ? north[k - columns] : 0);
        }
        return values;
    }

    private double[] storage() {
        double[] values = new double[transmissivity.length];
        for (int k = 0; k < values.length; k++) {
            values[k] = STORATIVITY * widthX[k % columns] * widthY[k / columns];
        }
        return values;
    }

    /** Returns the abstraction of the 16 bores (m3/d). */
    public double[] rightHandSide() {
        double[] values = new double[transmissivity.length];
        for (int bore = 0; bore < BORES_A_SIDE * BORES_A_SIDE; bore++) {
            values[boreCell(bore)] = RATE;
        }
        return values;
    }

    /** Returns the abstraction of one of the 16 bores (m3/d), {@code 0 <= bore < 16}. */
    public double[] rightHandSide(int bore) {
        double[] values = new double[transmissivity.length];
        values[boreCell(bore)] = RATE;
        return values;
    }

    private int boreCell(int bore) {
        return boreIndex(bore / BORES_A_SIDE, rows) * columns + boreIndex(bore % BORES_A_SIDE, columns);
    }

    /** Returns mean, mean over the bore cells and maximum of a drawdown (m). */
    public DrawdownFigures figures(double[] drawdown) {
        double sum = 0;
        double max = Double.NEGATIVE_INFINITY;
        for (double value : drawdown) {
            sum += value;
            max = Math.max(max, value);
        }
        double bores = 0;
        for (int bore = 0; bore < BORES_A_SIDE * BORES_A_SIDE; bore++) {
            bores += drawdown[boreCell(bore)];
        }
        return new DrawdownFigures(sum / drawdown.length, bores / (BORES_A_SIDE * BORES_A_SIDE), max);
    }
}
