package org.headfall.validation.benchmark;

/**
 * Sizes that bars are measured at.
 *
 * @param n cells a side of most solves
 * @param hardN cells a side of the variants
 * @param smallN cells a side where growth begins
 * @param largeN cells a side where growth ends
 * @param rounds timed solves of each case
 * @param fieldCells cells of the field that is run
 * @param fieldYears years of that run
 * @param example folder of the example that is run and checked
 * @param checks processes that check it, and that answer it again from its responses
 * @param rateSets sets of rates that are superposed
 * @param siteCells cells of the map of sites
 * @param allocationCells cells of the field whose rates are found
 * @param yearsAlike years with the same rates there
 */
record BarSizes(
        int n,
        int hardN,
        int smallN,
        int largeN,
        int rounds,
        int fieldCells,
        int fieldYears,
        String example,
        int checks,
        int rateSets,
        int siteCells,
        int allocationCells,
        int yearsAlike) {

    /** Those that the bars are meant for. */
    static final BarSizes OF_BARS =
            new BarSizes(1024, 512, 256, 4096, 7, 1_000_000, 50, "tessaby", 5, 10_000, 150_000, 10_000, 1);

    /** Small ones, which show that each part works and say nothing about speed. */
    static final BarSizes OF_TRIAL = new BarSizes(128, 64, 64, 256, 1, 10_000, 2, "corella", 1, 64, 10_000, 1_600, 25);
}
