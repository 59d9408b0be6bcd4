package org.headfall.scenarios.sweep.results;

import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.statistics.GroupedMeans;
import org.headfall.scenarios.sweep.statistics.Share;
import org.headfall.scenarios.sweep.statistics.Swing;

/**
 * How much a figure depends on a variable.
 *
 * @param figure the figure
 * @param variable the variable
 * @param rank rank correlation of the two
 * @param alone the same with what it is correlated with held; of nothing if it is correlated with nothing
 * @param swing mean figure with the variable in its lowest and in its highest tenth, or with the values that differ most
 * @param groups mean figure of groups along the variable; of nothing where values have no order
 * @param indices Sobol indices; of nothing if runs were not chosen for them
 * @param probability of any measure of any variable as far from no influence by chance alone, where none has any; at most 1
 * @param samples how many independent samples have the figure
 * @param resolution the smallest difference of the figure that means something, in its unit
 */
public record Influence(
        String figure,
        Variable variable,
        RankCorrelation rank,
        Optional<Alone> alone,
        Swing swing,
        GroupedMeans groups,
        Indices indices,
        double probability,
        int samples,
        double resolution) {

    private static final double OUTSIDE = 0.05;

    /**
     * A rank correlation and its 95 per cent interval.
     *
     * @param value from -1 to 1, NaN where values are no numbers
     * @param low lower end of the interval, NaN if it is not known
     * @param high upper end
     */
    public record RankCorrelation(double value, double low, double high) {

        /** Where every combination was run the interval has no width, and sums that cancel leave some 1e-17. */
        private static final double ROUNDING = 1e-9;

        /** {@return 1 or -1 if the figure rises or falls with the variable, 0 if that is not told apart from none} */
        int way() {
            boolean rounding = Math.abs(value) < ROUNDING;
            return !rounding && (low > 0 || high < 0) ? (int) Math.signum(value) : 0;
        }
    }

    /**
     * What a variable does that is correlated with others.
     *
     * @param with names of the others, with their rank correlations
     * @param rank partial rank correlation, the others held
     */
    public record Alone(String with, RankCorrelation rank) {}

    /**
     * Sobol indices with their standard errors, NaN where there is no error.
     *
     * @param first first index
     * @param total total index
     * @param firstError standard error of the first index
     * @param totalError standard error of the total index
     * @param variance variance of the figure, in its unit squared
     */
    public record Indices(
            OptionalDouble first, OptionalDouble total, double firstError, double totalError, double variance) {
        private static final double CONTRADICTION = 0.1;

        /** No indices. */
        static final Indices NONE =
                new Indices(OptionalDouble.empty(), OptionalDouble.empty(), Double.NaN, Double.NaN, Double.NaN);

        /** The probability of a total index so many standard errors from 0 by chance alone; NaN if there is no error. */
        double probability() {
            return totalError > 0
                    ? 2
                            * new NormalDistribution(null, 0, 1)
                                    .cumulativeProbability(-Math.abs(total.orElse(0)) / totalError)
                    : Double.NaN;
        }

        /**
         * Whether the first index is above the total one by more than a tenth. No variable explains more alone than with
         * the others, so that is by sampling; a tenth is common practice, no source.
         */
        boolean contradictThemselves() {
            return first.orElse(0) - total.orElse(1) > CONTRADICTION;
        }

        /**
         * Whether the total index tells a variable apart from none. It is a mean of squares, which the errors of runs alone
         * make greater than any number of its standard errors; so the change of the figure by the variable alone, the root
         * of twice total index times variance by Jansen (1999), must mean something too.
         */
        boolean areToldApart(double resolution) {
            double part = total.orElse(0);
            return part > Share.DEVIATIONS * totalError && Math.sqrt(2 * part * variance) > resolution;
        }
    }

    /** Whether the measures of all variables, taken together, tell it apart from no influence. */
    public boolean isToldApart() {
        return isCertain()
                && !isBorrowed()
                && (swings() || bends() || ranks() != 0 || indices.areToldApart(resolution));
    }

    /** Whether it only goes along with what it is correlated with: nothing is told apart once that is held. */
    private boolean isBorrowed() {
        return alone.isPresent() && rank.way() != 0 && alone.get().rank().way() == 0;
    }

    private boolean isCertain() {
        return probability <= OUTSIDE;
    }

    /** Whether means of groups along the variable differ, be it that they rise and fall again. */
    private boolean bends() {
        return isCertain() && groups.probability() <= OUTSIDE && groups.length() > resolution;
    }

    /** Whether the bar is longer than its error and than what means something. */
    public boolean swings() {
        return isCertain() && swing.isToldApart() && swing.length() > resolution;
    }

    /** The way of the ranks; differences that mean nothing have ranks too. */
    private int ranks() {
        return isCertain() && swing.length() > resolution ? rank.way() : 0;
    }

    /** By what influences are put in order: the total index if there is one, otherwise how far the figure swings, between its ends or within. */
    double weight() {
        double weight = indices.total().orElse(isLongerWithin() ? groups.length() : swing.length());
        return Double.isNaN(weight) ? -1 : weight;
    }

    /** Whether groups differ by more than the ends, so that the bar does not show how much it counts. */
    boolean isLongerWithin() {
        return bends() && swingsNoWay() && groups.length() > swing.length();
    }

    private boolean swingsNoWay() {
        return ranks() == 0 || !swings() || ranks() != Math.signum(swing.high() - swing.low());
    }

    private double error() {
        return isLongerWithin() ? groups.error() : swing.error();
    }

    /**
     * Whether sampling leaves open which of the two counts more; taken as if both errors were independent. It does where an
     * error is not known.
     */
    boolean isLikeIn(Influence other) {
        double error = indices.total().isPresent()
                ? Share.DEVIATIONS * Math.hypot(indices.totalError(), other.indices.totalError())
                : Math.hypot(error(), other.error());
        return !(Math.abs(weight() - other.weight()) > error);
    }

    /**
     * What all measures together say of the way the figure goes.
     *
     * @return words such as "rises with it"; they say so where two measures differ
     */
    public String words() {
        if (Double.isNaN(swing.length())) {
            return "not put in order";
        }
        if (!variable.numeric()) {
            return choiceWords();
        }
        if (isCertain() && isBorrowed()) {
            return "goes along with " + alone.map(Alone::with).orElseThrow() + ", not told apart on its own";
        }
        return numberWords() + (isToldApart() ? alone.map(Influence::aloneWords).orElse("") : "");
    }

    private static String aloneWords(Alone alone) {
        int way = alone.rank().way();
        return "; correlated with " + alone.with() + ", by itself "
                + (way == 0 ? "without a trend" : way > 0 ? "it rises" : "it falls");
    }

    private String numberWords() {
        int swings = swings() ? (int) Math.signum(swing.high() - swing.low()) : 0;
        int ranks = ranks();
        if (swings == 0 && ranks == 0) {
            if (bends()) {
                return "does not go one way: differs within its range, not between its ends";
            }
            return indices.total().isPresent() && isToldApart()
                    ? "counts, but not by rising or falling"
                    : "not told apart from none";
        }
        if (swings == ranks) {
            return swings > 0 ? "rises with it" : "falls with it";
        }
        if (swings == 0) {
            return (ranks > 0 ? "rises" : "falls") + " with it by ranks; the bar is not told apart from none";
        }
        String ends = (swings > 0 ? "greater" : "less") + " in its highest tenth than in its lowest, ";
        return ranks == 0
                ? ends + "by ranks not told apart from none"
                : ends + "yet " + (ranks > 0 ? "rises" : "falls") + " with it by ranks: it does not go one way";
    }

    /** The same in a few words, for a picture. */
    public String shortWords() {
        if (!variable.numeric()) {
            return swings() ? "between its values" : words();
        }
        if (isCertain() && isBorrowed()) {
            return "not told apart on its own";
        }
        int swings = swings() ? (int) Math.signum(swing.high() - swing.low()) : 0;
        if (swings == 0 && ranks() != 0) {
            return (ranks() > 0 ? "rises" : "falls") + " by ranks, bar not told apart";
        }
        if (swings != 0 && ranks() == 0) {
            return (swings > 0 ? "greater" : "less") + " where it is high, no trend by ranks";
        }
        if (swings == 0 && bends()) {
            return "does not go one way";
        }
        return swings == -ranks() && swings != 0 ? "does not go one way" : numberWords();
    }

    private String choiceWords() {
        return swings()
                ? "least with " + Choices.shortText(variable, swing.atLow()) + ", greatest with "
                        + Choices.shortText(variable, swing.atHigh())
                : isToldApart() ? "counts, but not by the means of its values" : "values not told apart";
    }
}
