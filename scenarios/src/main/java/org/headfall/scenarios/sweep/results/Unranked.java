package org.headfall.scenarios.sweep.results;

import java.util.List;
import java.util.Locale;

/**
 * Variables that could not be ranked by how much a figure depends on them, such as random fields.
 *
 * @param variables their names, at least one
 * @param share share of the variation of the figure that those ranked leave unexplained; NaN if it cannot be told
 * @param outweighs whether a variable that was ranked may not be named as what counts most
 */
public record Unranked(List<String> variables, double share, boolean outweighs) {

    private static final double PER_CENT = 100;

    /** Copies the list. */
    public Unranked {
        variables = List.copyOf(variables);
    }

    /** What was not ranked and how much may come from it, in a sentence. */
    public String words() {
        String names = String.join(", ", variables);
        String left = Double.isNaN(share)
                ? "how much comes from it cannot be told from these runs"
                : String.format(
                        Locale.ROOT,
                        "about %.0f %% of the variation is left to it and to what variables do together",
                        PER_CENT * share);
        return "Not ranked: " + names + " (no number); " + left
                + (outweighs ? ", so that it may count more than all that was ranked." : ".");
    }
}
