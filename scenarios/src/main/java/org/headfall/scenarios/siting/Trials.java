package org.headfall.scenarios.siting;

/**
 * Cells for one site that allowed the rate by the map and did not when they were solved for. Each takes a solution of the
 * whole field, so after some the search ends, and says so.
 *
 * @param failed how many were tried
 * @param untried how many others allow the rate by the map
 */
record Trials(int failed, int untried) {

    /** Nothing was tried. */
    static final Trials NONE = new Trials(0, 0);

    private static final int MOST = 12;

    /** Whether another cell may be tried. */
    boolean goOn() {
        return failed < MOST;
    }

    /**
     * One more has failed.
     *
     * @param open cells that allow the rate by the map and have not been tried
     */
    Trials failed(boolean[] open) {
        int left = 0;
        for (boolean one : open) {
            left += one ? 1 : 0;
        }
        return new Trials(failed + 1, left);
    }
}
