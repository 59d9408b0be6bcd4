package org.headfall.scenarios.results;

import java.util.Optional;

/**
 * What a run was answered from, where it was not simulated on the grid.
 *
 * @param folder results that hold its unit responses, or in words what else it was answered from
 * @param aquiferKey SHA-256 of what the responses depend on, the same for the run; absent if it has sources of its own
 * @param estimatedError error of head by answering in this way, as estimated (m)
 */
public record AnsweredFrom(String folder, Optional<String> aquiferKey, double estimatedError) {

    private static final int DIGITS_SHOWN = 12;

    /** Says so in a sentence without its full stop. */
    public String words() {
        return aquiferKey
                .map(key -> "the unit responses of " + folder + " (same aquifer and grid, key "
                        + key.substring(0, Math.min(DIGITS_SHOWN, key.length())) + ")")
                .orElse(folder);
    }
}
