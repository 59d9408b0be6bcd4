package org.headfall.solver.response;

/**
 * Weights of the value at the left end, the value at the right end, the slope at the left end and the slope at the
 * right end in a cubic over the logarithm of time, and in its integral over time.
 */
final class HermiteWeights {

    private HermiteWeights() {}

    /** Weights of the value at a fraction u of an interval of given width in the logarithm of time. */
    static double[] value(double width, double u) {
        double v = 1 - u;
        return new double[] {v * v * (1 + 2 * u), u * u * (1 + 2 * v), u * v * v * width, -u * u * v * width};
    }

    /**
     * Weights of the integral over time from the left end of an interval to a fraction u of it. With x the logarithm of
     * time since the left end, {@code ∫ p(x) e^x dx = e^x (p - p' + p'' - p''')}.
     *
     * @param start time at the left end (d)
     * @param width width of the interval in the logarithm of time
     * @param u fraction of the interval
     */
    static double[] integral(double start, double width, double u) {
        double square = 1 / (width * width);
        double cube = square / width;
        return new double[] {
            start * integral(1, 0, -3 * square, 2 * cube, u * width),
            start * integral(0, 0, 3 * square, -2 * cube, u * width),
            start * integral(0, 1, -2 / width, square, u * width),
            start * integral(0, 0, -1 / width, square, u * width)
        };
    }

    /** Integral of {@code (a + b x + c x² + d x³) e^x} from 0 to x. */
    private static double integral(double a, double b, double c, double d, double x) {
        double constant = a - b + 2 * c - 6 * d;
        double linear = b - 2 * c + 6 * d;
        double quadratic = c - 3 * d;
        return constant * Math.expm1(x) + Math.exp(x) * x * (linear + x * (quadratic + x * d));
    }
}
