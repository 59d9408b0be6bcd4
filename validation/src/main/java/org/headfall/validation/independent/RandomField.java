package org.headfall.validation.independent;

import java.util.Random;

/**
 * A smooth random field that is the same function of place on every grid: a sum of waves of random direction, length and
 * phase.
 */
final class RandomField {

    private static final int WAVES = 12;

    private final double[] waveX = new double[WAVES];
    private final double[] waveY = new double[WAVES];
    private final double[] phase = new double[WAVES];

    /**
     * Draws a field.
     *
     * @param random source of the waves
     * @param shortest shortest wave (m); the longest is four times longer
     */
    RandomField(Random random, double shortest) {
        for (int i = 0; i < WAVES; i++) {
            double number = 2 * Math.PI / (shortest * (1 + 3 * random.nextDouble()));
            double direction = 2 * Math.PI * random.nextDouble();
            waveX[i] = number * Math.cos(direction);
            waveY[i] = number * Math.sin(direction);
            phase[i] = 2 * Math.PI * random.nextDouble();
        }
    }

    /** Value at a place; mean 0, standard deviation about 1. */
    double at(double x, double y) {
        double sum = 0;
        for (int i = 0; i < WAVES; i++) {
            sum += Math.cos(waveX[i] * x + waveY[i] * y + phase[i]);
        }
        return sum * Math.sqrt(2.0 / WAVES);
    }
}
