package org.headfall.scenarios.sweep.store;

/**
 * How many runs are in which state.
 *
 * @param planned runs to be made
 * @param finished runs with figures
 * @param failed runs that could not be made
 */
public record Counts(int planned, int finished, int failed) {

    /** All runs. */
    public int all() {
        return planned + finished + failed;
    }
}
