package org.headfall.validation.benchmark;

/**
 * What is solved.
 *
 * @param columns number of cells to the east
 * @param rows number of cells to the north
 * @param days length of the step (d), infinite for the steady state
 * @param threads number of threads
 * @param rightHandSides systems solved at once: 1, all bores together, or up to 16, one bore each
 * @param variant what is changed in the problem
 */
record SolveCase(int columns, int rows, double days, int threads, int rightHandSides, Variant variant) {
    SolveCase {
        if (columns < 32 || rows < 32) {
            throw new IllegalArgumentException("grid of " + columns + " x " + rows + ": at least 32 a side are needed");
        }
        if (!(days > 0)) {
            throw new IllegalArgumentException("step of " + days + " d is not positive");
        }
        if (rightHandSides < 1 || rightHandSides > 16) {
            throw new IllegalArgumentException(rightHandSides + " right-hand sides: 1 to 16 are allowed");
        }
    }

    /** The plain problem on a square grid with one right-hand side and two threads. */
    static SolveCase plain(int n, double days) {
        return new SolveCase(n, n, days, 2, 1, Variant.PLAIN);
    }

    SolveCase withRightHandSides(int count) {
        return new SolveCase(columns, rows, days, threads, count, variant);
    }

    int cells() {
        return columns * rows;
    }

    String step() {
        return Double.isInfinite(days) ? "steady" : String.valueOf(days);
    }
}
