package org.headfall.scenarios.siting;

/** The largest rate that each cell allows so far, and what decides it. */
final class RateBounds {

    private final double[] rate;
    private final int[] ruling;

    /** No bound but one for all. */
    RateBounds(int cells, double largestRate) {
        rate = new double[cells];
        ruling = new int[cells];
        java.util.Arrays.fill(rate, largestRate);
    }

    private RateBounds(double[] rate, int[] ruling) {
        this.rate = rate.clone();
        this.ruling = ruling.clone();
    }

    /** The same bounds, to be lowered further. */
    RateBounds copy() {
        return new RateBounds(rate, ruling);
    }

    /** Lowers the bound of a cell; never below zero. */
    void lower(int cell, double most, int reason) {
        double bound = Math.max(0, most);
        if (bound < rate[cell]) {
            rate[cell] = bound;
            ruling[cell] = reason;
        }
    }

    /** Largest rate of each cell (m³/d). */
    double[] rate() {
        return rate;
    }

    /** Number of the reason that decides it, see {@link Ruling}. */
    int[] ruling() {
        return ruling;
    }
}
