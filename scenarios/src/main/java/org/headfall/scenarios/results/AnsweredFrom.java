package org.headfall.scenarios.results;

/**
 * The unit responses that a run was answered from, where it was not simulated on the grid.
 *
 * @param folder results that hold them
 * @param aquiferKey SHA-256 of what they depend on, the same for the run
 * @param estimatedError bound of the error of head by answering in this way (m)
 */
public record AnsweredFrom(String folder, String aquiferKey, double estimatedError) {

    private static final int DIGITS_SHOWN = 12;

    /** Says so in a sentence without its full stop. */
    public String words() {
        return "the unit responses of " + folder + " (same aquifer and grid, key "
                + aquiferKey.substring(0, Math.min(DIGITS_SHOWN, aquiferKey.length())) + ")";
    }
}
