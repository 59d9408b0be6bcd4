package org.headfall.scenarios.limits;

/**
 * A limit that a search for sites or rates does not keep by itself, or that cannot be monitored.
 *
 * @param limit the limit and its place
 * @param reason why, in words that go on after its name
 * @param outcome what the simulator says of it with what was found; empty if it was not asked
 */
public record UncountedLimit(String limit, String reason, String outcome) {

    /** All of it in one sentence without a full stop. */
    public String sentence() {
        return limit + " " + reason + (outcome.isEmpty() ? "" : "; by the simulator: " + outcome);
    }
}
