package org.headfall.scenarios.sweep.results;

import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.document.Variation;

/** Values of variables as readers see them. */
public final class Choices {

    private static final int LONGEST = 60;

    private Choices() {}

    /**
     * A value for a table.
     *
     * @param variable the variable
     * @param input what a run got for it
     * @return its number of four digits, without the unit; its text where it is no number, short if it is of a list
     */
    public static String inTable(Variable variable, Input input) {
        return variable.numeric() ? Numbers.words(input.number()) : inSentence(variable, input);
    }

    /**
     * A value for a sentence.
     *
     * @param variable the variable
     * @param input what a run got for it
     * @return all its digits and the unit; its text where it is no number, short if it is of a list
     */
    public static String inSentence(Variable variable, Input input) {
        if (variable.numeric()) {
            return Numbers.exact(input.number()) + (variable.unit().isEmpty() ? "" : " " + variable.unit());
        }
        return variable.variation() instanceof Variation.Listed ? shortText(variable, input.number()) : input.text();
    }

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
