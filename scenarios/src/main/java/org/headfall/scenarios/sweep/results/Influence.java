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

        /** {@return whether the figure rises or falls with the variable; nothing if that is not told apart from none} */
        Optional<Direction> direction() {
            boolean rounding = Math.abs(value) < ROUNDING;
            return !rounding && (low > 0 || high < 0) ? Direction.of(value) : Optional.empty();
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
                && (swings() || bends() || ranks().isPresent() || indices.areToldApart(resolution));
    }

    /** Whether it only goes along with what it is correlated with: nothing is told apart once that is held. */
    private boolean isBorrowed() {
        return alone.isPresent()
                && rank.direction().isPresent()
                && alone.get().rank().direction().isEmpty();
    }

    private boolean isCertain() {
        return probability <= OUTSIDE;
    }

    /** Whether means of groups along the variable differ, be it that they rise and fall again. */
    private boolean bends() {
        return isCertain() && groups.probability() <= OUTSIDE && groups.length() > resolution;
    }

    /** Whether the bar is longer than its error and than what means something. */
    private boolean swings() {
        return isCertain() && swing.isToldApart() && swing.length() > resolution;
    }

    /**
     * The direction from the lowest to the highest tenth, or from the value with the least mean to that with the greatest.
     *
     * @return nothing if the bar between them is not longer than its error and than what means something
     */
    public Optional<Direction> ends() {
        return swings() ? Direction.of(swing.high() - swing.low()) : Optional.empty();
    }

    /** The direction of the ranks; differences that mean nothing have ranks too. */
    private Optional<Direction> ranks() {
        return isCertain() && swing.length() > resolution ? rank.direction() : Optional.empty();
    }

    /** By what influences are put in order: the total index if there is one, otherwise how far the figure swings, between its ends or within. */
    double weight() {
        double weight = indices.total().orElse(isLongerWithin() ? groups.length() : swing.length());
        return Double.isNaN(weight) ? -1 : weight;
    }

    /** Whether groups differ by more than the ends, so that the bar does not show how much it counts. */
    boolean isLongerWithin() {
        boolean oneWay = ranks().isPresent() && ranks().equals(ends());
        return bends() && !oneWay && groups.length() > swing.length();
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
        return way().words();
    }

    /** The same in a few words, for a picture. */
    public String shortWords() {
        return way().shortWords();
    }

    /** The way the figure goes, by all measures together. */
    Way way() {
        if (Double.isNaN(swing.length())) {
            return Way.Plain.NOT_IN_ORDER;
        }
        if (!variable.numeric()) {
            return wayOfChoices();
        }
        if (isCertain() && isBorrowed()) {
            return new Way.GoingAlong(alone.orElseThrow().with());
        }
        Way whole = wayOfNumbers();
        return isToldApart() && alone.isPresent()
                ? new Way.Correlated(
                        whole, alone.get().with(), alone.get().rank().direction())
                : whole;
    }

    private Way wayOfChoices() {
        if (swings()) {
            return new Way.BetweenValues(
                    Choices.shortText(variable, swing.atLow()), Choices.shortText(variable, swing.atHigh()));
        }
        return isToldApart() ? Way.Plain.NOT_BY_MEANS : Way.Plain.VALUES_NOT_TOLD_APART;
    }

    private Way wayOfNumbers() {
        Optional<Direction> ranks = ranks();
        Optional<Direction> ends = ends();
        if (ends.isEmpty()) {
            return ranks.<Way>map(Way.ByRanks::new).orElseGet(this::wayWithoutDirection);
        }
        if (ranks.isEmpty()) {
            return new Way.ByEnds(ends.get());
        }
        return ends.equals(ranks) ? new Way.Trend(ends.get()) : new Way.Contrary(ends.get(), ranks.get());
    }

    private Way wayWithoutDirection() {
        if (bends()) {
            return Way.Plain.WITHIN_ITS_RANGE;
        }
        return indices.total().isPresent() && isToldApart()
                ? Way.Plain.NEITHER_RISING_NOR_FALLING
                : Way.Plain.NOT_TOLD_APART;
    }
}
