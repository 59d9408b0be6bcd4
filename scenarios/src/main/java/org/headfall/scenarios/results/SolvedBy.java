package org.headfall.scenarios.results;

/**
 * How heads of a run through time were found.
 *
 * @param superposition whether by superposition of unit responses; otherwise by steps of the grid through time
 * @param why why so, in words without a full stop
 * @param estimatedError error of head by superposition as estimated (m); zero if by steps
 */
public record SolvedBy(boolean superposition, String why, double estimatedError) {

    /** Says so in a sentence without its full stop. */
    public String words() {
        return (superposition ? "by superposition of unit responses" : "by steps through time") + ": " + why;
    }
}
