package org.headfall.validation.benchmark;

/** A figure that has a bar, which it may not exceed, and mostly an aim below that. */
enum Bar {
    SOLVE_TO_PEER("solve to 1e-8, worst step, over the other program's", 0.50, 0.30),
    BOTH_TO_PEER("set-up and solve, worst step, over the other program's", 0.65, 0.40),
    OVER_MEMORY_TIME("solve over time of memory, worst step", 2.0, 1.2),
    ITERATIONS_OF_A_DAY("iterations, 1 d", 8, Bar.NO_AIM),
    ITERATIONS_OF_A_YEAR("iterations, 365 d", 13, Bar.NO_AIM),
    ITERATIONS_STEADY("iterations, steady", 14, Bar.NO_AIM),
    ITERATIONS_MORE("iterations more at twice n, worst step", 2, Bar.NO_AIM),
    NEW_STEP("set-up for a new step, in solves, worst step", 0.30, 0.15),
    HARD_ITERATIONS("iterations on hard variants and odd sizes, worst", 20, 12),
    TIME_EXPONENT("exponent of time, 65 thousand to 16 million cells", 1.05, Bar.NO_AIM),
    MEMORY_EXPONENT("exponent of memory, 65 thousand to 16 million cells", 1.05, Bar.NO_AIM),
    BYTES_A_CELL("bytes a cell in all, worst size", 150, 100),
    BYTES_OF_LINES("bytes a cell in all on hard variants, worst", 150, 100),
    EACH_OF_SIXTEEN("16 right-hand sides at once, each over one alone", 0.80, 0.65),
    EXAMPLE_SECONDS("run of the example, whole process (s)", 15, 5),
    FIELD_SECONDS("1 million cells, 50 years, whole process (s)", 120, 40),
    FIELD_HEAP("1 million cells, 50 years, peak of the heap (MiB)", 1024, Bar.NO_AIM),
    CHECK_SECONDS("check of the example, whole process, median (s)", 0.8, 0.4),
    RESPONSES_SECONDS("unit responses of the example (s)", 40, 10),
    ESTIMATE_SECONDS("estimate of the example, whole process, median (s)", 1.5, 0.7),
    RATE_SETS_SECONDS("10,000 sets of monthly rates for 50 years (s)", 60, 10),
    SITES_SECONDS("map of sites, 6 points, 150,000 cells (s)", 30, 8),
    ALLOCATION_SECONDS("rates of 20 bores, 50 years, 30 limits (s)", 30, 5);

    private static final double NO_AIM = Double.NaN;

    private final String what;
    private final double most;
    private final double aim;

    Bar(String what, double most, double aim) {
        this.what = what;
        this.most = most;
        this.aim = aim;
    }

    /** What is measured, with its unit. */
    String what() {
        return what;
    }

    /** The bar. */
    double most() {
        return most;
    }

    /** What is aimed at; NaN where that is no number. */
    double aim() {
        return aim;
    }
}
