package org.headfall.scenarios.sweep.store;

import java.util.Arrays;

/**
 * What came of a run.
 *
 * @param number its number
 * @param figures its kept figures, NaN where there is none; empty if it failed
 * @param reason why it failed; empty if it did not
 * @param way how it was answered, in a few words
 * @param seconds elapsed time (s)
 */
@SuppressWarnings("ArrayRecordComponent") // handed on once, never compared
public record RunOutcome(int number, double[] figures, String reason, String way, double seconds) {

    /** Whether it failed. */
    public boolean failed() {
        return !reason.isEmpty();
    }

    @Override
    public String toString() {
        return "run " + number + ": " + (failed() ? reason : Arrays.toString(figures));
    }
}
