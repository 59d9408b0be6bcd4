package org.headfall.scenarios.sweep.results;

import java.util.Arrays;
import org.headfall.scenarios.run.RunFromResponses;
import org.headfall.scenarios.sweep.figures.KeptFigure;

/** The smallest difference of a figure that means something. */
final class Resolution {

    /** Far above rounding and far below what a figure is known to. */
    private static final double OF_OTHERS = 1e-6;

    private Resolution() {}

    /**
     * The smallest difference that two runs can be told apart by: for heads and depths what runs are exact to, otherwise a
     * millionth of the largest value.
     *
     * @param figure a figure
     * @param values its values
     * @return the difference, in its unit
     */
    static double of(KeptFigure figure, double[] values) {
        boolean length = figure.unit().equals("m") || figure.unit().startsWith("m ");
        return length
                ? RunFromResponses.PROMISED
                : OF_OTHERS
                        * Arrays.stream(values)
                                .filter(Double::isFinite)
                                .map(Math::abs)
                                .max()
                                .orElse(0);
    }
}
