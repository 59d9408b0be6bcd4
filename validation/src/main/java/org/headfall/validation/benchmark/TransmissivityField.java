package org.headfall.validation.benchmark;

import java.util.stream.IntStream;

/** The benchmark's transmissivity: log-normal, variance of ln T 3, correlation length 2,000 m, from 128 plane waves. */
final class TransmissivityField {
    private static final int WAVES = 128;
    private static final double MEAN = 200;
    private static final double VARIANCE = 3;
    private static final double CORRELATION_LENGTH = 2000;
    private static final double CELL = 100;

    private final double[] waveX = new double[WAVES];
    private final double[] waveY = new double[WAVES];
    private final double[] phase = new double[WAVES];

    TransmissivityField() {
        SplitMix64 random = new SplitMix64(20260701);
        for (int m = 0; m < WAVES; m++) {
            double u = random.nextUniform();
            double v = random.nextUniform();
            double w = random.nextUniform();
            double q = 1 - 0.98 * u;
            double k = Math.sqrt(1 / (q * q) - 1) / CORRELATION_LENGTH;
            waveX[m] = k * Math.cos(2 * Math.PI * v);
            waveY[m] = k * Math.sin(2 * Math.PI * v);
            phase[m] = 2 * Math.PI * w;
        }
    }

    /** Returns T (m2/d) at the centre of cell (i, j) of 100 m. */
    double at(int i, int j) {
        double x = CELL * (i + 0.5);
        double y = CELL * (j + 0.5);
        double sum = 0;
        for (int m = 0; m < WAVES; m++) {
            sum += Math.cos(waveX[m] * x + waveY[m] * y + phase[m]);
        }
        return MEAN * Math.exp(Math.sqrt(VARIANCE) * Math.sqrt(2.0 / WAVES) * sum);
    }

    /** Returns T of a grid, index j columns + i. */
    double[] onGrid(int columns, int rows) {
        double[] values = new double[columns * rows];
        IntStream.range(0, rows).parallel().forEach(j -> {
            for (int i = 0; i < columns; i++) {
                values[j * columns + i] = at(i, j);
            }
        });
        return values;
    }
}
