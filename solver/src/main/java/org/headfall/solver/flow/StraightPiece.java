package org.headfall.solver.flow;

/** Integral of a value that runs straight over a time. */
public final class StraightPiece {

    private StraightPiece() {}

    /**
     * Integral of the value, or of its positive or negative part alone.
     *
     * @param first value at the beginning
     * @param last value at the end
     * @param length length of the time
     * @param sign 0 for all, 1 for what is positive, -1 for what is negative
     * @return the integral, not positive for -1
     */
    public static double integral(double first, double last, double length, int sign) {
        if (sign == 0) {
            return 0.5 * (first + last) * length;
        }
        double begin = sign * first;
        double end = sign * last;
        if (begin >= 0 && end >= 0) {
            return sign * 0.5 * (begin + end) * length;
        }
        if (begin <= 0 && end <= 0) {
            return 0;
        }
        double larger = Math.max(begin, end);
        return sign * 0.5 * larger * length * larger / Math.abs(begin - end);
    }
}
