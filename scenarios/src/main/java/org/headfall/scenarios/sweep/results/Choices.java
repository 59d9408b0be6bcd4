package org.headfall.scenarios.sweep.results;

import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.document.Variation;

/** Values that are no numbers, short enough for a sentence. */
final class Choices {

    private static final int LONGEST = 60;

    private Choices() {}

    /**
     * A value of a list.
     *
     * @param variable whose values are listed
     * @param number its place in the list, from 1
     * @return its text; the number of the value and the beginning of its text if that is long
     */
    static String shortText(Variable variable, double number) {
        if (!(variable.variation() instanceof Variation.Listed listed)) {
            return "value " + (long) number;
        }
        String text = listed.inputs().get((int) number - 1).text();
        return text.length() <= LONGEST
                ? text
                : "value " + (int) number + " (" + text.substring(0, LONGEST).strip() + " …)";
    }
}
