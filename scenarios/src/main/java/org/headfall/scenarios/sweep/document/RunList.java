package org.headfall.scenarios.sweep.document;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.sweep.sampling.RankCorrelations;
import org.headfall.scenarios.sweep.sampling.Sampling;

/**
 * What each run of a sweep gets, in the order of their numbers. Only coordinates are kept; values are made when asked
 * for.
 */
public final class RunList extends AbstractList<Map<Variable, Input>> {

    /** Keeps the order of the document until the value is known. */
    private static final Input PENDING = Input.of(new Measure(0, ""), Place.ofFile(""));

    private final List<Variable> variables;
    private final List<Variable> factors;
    private final List<Variable> sampled;
    private final double[][] points;
    private final int combinations;
    private final int independent;

    /**
     * The runs of a sweep.
     *
     * @param sweep the sweep
     */
    public RunList(SweepDocument sweep) {
        this(sweep.variables(), sweep.design(), sweep.correlations());
    }

    /** The runs of a design, which does not have more of them than there can be. */
    RunList(List<Variable> variables, Design design, List<Correlation> correlations) {
        this.variables = List.copyOf(variables);
        factors = variables.stream()
                .filter(variable -> isFactor(design, variable))
                .toList();
        sampled = variables.stream()
                .filter(variable -> !isFactor(design, variable))
                .toList();
        combinations = (int) combinations(factors);
        points = points(design, correlations);
        independent = design instanceof Design.ForSobolIndices given ? 2 * given.samples() : points.length;
    }

    /** How many runs a design has; more than there can be if the product is large. */
    static double count(Design design, List<Variable> variables) {
        List<Variable> factors = variables.stream()
                .filter(variable -> isFactor(design, variable))
                .toList();
        if (design instanceof Design.ForSobolIndices indices) {
            return (double) indices.samples() * (variables.size() + 2);
        }
        int samples = design instanceof Design.Sampled given ? given.samples() : 1;
        return combinations(factors) * samples;
    }

    private static boolean isFactor(Design design, Variable variable) {
        return variable.variation() instanceof Variation.Listed
                && (design instanceof Design.FullFactorial
                        || (design instanceof Design.Sampled given
                                && given.forEachOf().contains(variable.name())));
    }

    private static double combinations(List<Variable> factors) {
        return factors.stream()
                .mapToDouble(factor ->
                        ((Variation.Listed) factor.variation()).inputs().size())
                .reduce(1, (a, b) -> a * b);
    }

    private double[][] points(Design design, List<Correlation> correlations) {
        if (design instanceof Design.Sampled given) {
            double[][] drawn = given.sampling().points(given.samples(), sampled.size(), given.seed());
            if (!correlations.isEmpty()) {
                new RankCorrelations(matrix(sampled, correlations)).impose(drawn);
            }
            return drawn;
        }
        return design instanceof Design.ForSobolIndices given
                ? forIndices(Sampling.SOBOL_SEQUENCE.points(given.samples(), 2 * sampled.size(), given.seed()))
                : new double[1][0];
    }

    /** The first set, the second, then for each variable the first with the values of that variable from the second. */
    private double[][] forIndices(double[][] both) {
        int samples = both.length;
        int axes = sampled.size();
        double[][] all = new double[samples * (axes + 2)][];
        for (int k = 0; k < samples; k++) {
            double[] first = Arrays.copyOf(both[k], axes);
            double[] second = Arrays.copyOfRange(both[k], axes, 2 * axes);
            all[k] = first;
            all[samples + k] = second;
            for (int axis = 0; axis < axes; axis++) {
                double[] mixed = first.clone();
                mixed[axis] = second[axis];
                all[(axis + 2) * samples + k] = mixed;
            }
        }
        return all;
    }

    /** Rank correlations of all pairs. */
    static double[][] matrix(List<Variable> variables, List<Correlation> correlations) {
        List<String> names = variables.stream().map(Variable::name).toList();
        double[][] rank = new double[names.size()][names.size()];
        for (int i = 0; i < rank.length; i++) {
            rank[i][i] = 1;
        }
        for (Correlation correlation : correlations) {
            int first = names.indexOf(correlation.first());
            int second = names.indexOf(correlation.second());
            rank[first][second] = correlation.rank();
            rank[second][first] = correlation.rank();
        }
        return rank;
    }

    /** Whether there are numbers that are correlated like that. */
    static boolean canBeCorrelated(List<Variable> variables, List<Correlation> correlations) {
        try {
            new RankCorrelations(matrix(variables, correlations));
            return true;
        } catch (IllegalArgumentException contradiction) {
            return false;
        }
    }

    /**
     * The independent sample that a run belongs to. Runs of the same sample share all that is sampled and differ in the
     * listed values it is repeated for, so that they count once where it is asked how sure a figure is.
     *
     * @param index number of the run less one
     * @return number of the sample from 0; empty for a run that mixes two samples, which says nothing new of either but
     *     for Sobol indices
     */
    public OptionalInt sample(int index) {
        int sample = index % points.length;
        return sample < independent ? OptionalInt.of(sample) : OptionalInt.empty();
    }

    @Override
    public int size() {
        return points.length * combinations;
    }

    /**
     * What a run gets.
     *
     * @param index number of the run less one
     * @return a value for each variable, in the order of the document
     */
    @Override
    public Map<Variable, Input> get(int index) {
        Map<Variable, Input> inputs = new LinkedHashMap<>();
        variables.forEach(variable -> inputs.put(variable, PENDING));
        double[] point = points[index % points.length];
        for (int axis = 0; axis < sampled.size(); axis++) {
            inputs.put(sampled.get(axis), sampled.get(axis).variation().at(point[axis]));
        }
        int combination = index / points.length;
        for (int i = factors.size() - 1; i >= 0; i--) {
            List<Input> values = ((Variation.Listed) factors.get(i).variation()).inputs();
            inputs.put(factors.get(i), values.get(combination % values.size()));
            combination /= values.size();
        }
        return inputs;
    }
}
