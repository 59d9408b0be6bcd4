package org.headfall.scenarios.sweep.results;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.headfall.scenarios.sweep.document.Correlation;
import org.headfall.scenarios.sweep.document.Design;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.statistics.GroupedMeans;
import org.headfall.scenarios.sweep.statistics.Ranks;
import org.headfall.scenarios.sweep.statistics.SobolIndices;
import org.headfall.scenarios.sweep.statistics.Swing;
import org.headfall.scenarios.sweep.statistics.Unexplained;

/** What the figures of a sweep depend on. */
public final class Influences {

    private final SweepTable table;
    private final List<Variable> variables;
    private final boolean everyCombination;
    private final int[] samples;

    /**
     * Influences on the figures of a table.
     *
     * @param table the table
     */
    public Influences(SweepTable table) {
        this.table = table;
        variables = table.sweep().variables();
        everyCombination = table.sweep().design() instanceof Design.FullFactorial;
        samples = table.samples();
    }

    /**
     * How much each figure asked for depends on each variable: what is told apart from no influence first, then the most
     * influential.
     */
    public Map<String, List<Influence>> byFigure() {
        Map<String, List<Influence>> all = new LinkedHashMap<>();
        for (String figure : table.sweep().questions().sensitivity()) {
            all.put(figure, of(figure));
        }
        return all;
    }

    private List<Influence> of(String figure) {
        List<Influence> influences = new ArrayList<>();
        Optional<SobolIndices> indices = indices(figure);
        for (int i = 0; i < variables.size(); i++) {
            influences.add(influence(figure, variables.get(i), i, indices));
        }
        influences.sort(Comparator.comparing(Influence::isToldApart)
                .thenComparingDouble(Influence::weight)
                .reversed());
        return influences;
    }

    private Influence influence(String figure, Variable variable, int place, Optional<SobolIndices> indices) {
        double[] values = ofSamples(table.figure(figure));
        double[] given = table.input(variable.name());
        int count = (int) IntStream.range(0, values.length)
                .filter(run -> Double.isFinite(values[run]))
                .map(run -> samples[run])
                .distinct()
                .count();
        Swing swing = swing(variable, given, values);
        double correlation = variable.numeric() ? Ranks.correlation(given, values) : Double.NaN;
        GroupedMeans groups = variable.numeric() ? GroupedMeans.of(given, values, samples) : GroupedMeans.NONE;
        Influence.Indices parts = indices.map(found -> new Influence.Indices(
                        OptionalDouble.of(found.first()[place]),
                        OptionalDouble.of(found.total()[place]),
                        found.firstError()[place],
                        found.totalError()[place],
                        found.variance()))
                .orElse(Influence.Indices.NONE);
        return new Influence(
                figure,
                variable,
                rank(correlation, count),
                alone(variable, given, values, count),
                everyCombination ? swing.withoutSampling() : swing,
                everyCombination ? groups.withoutSampling() : groups,
                parts,
                everyCombination
                        ? 0
                        : together(
                                swing.probability(),
                                Ranks.probability(correlation, count),
                                groups.probability(),
                                parts.probability()),
                count,
                Resolution.of(table.sweep().figure(figure), values));
    }

    /**
     * The least of the probabilities of some measures by chance alone, times the measures of all variables of which it may
     * have been picked (Dunn 1961, J. Am. Stat. Assoc. 56, 52-64); measures that are not known do not count.
     */
    private double together(double... probabilities) {
        double[] known = Arrays.stream(probabilities).filter(Double::isFinite).toArray();
        return Math.min(1, Arrays.stream(known).min().orElse(1) * known.length * variables.size());
    }

    /** A figure without those runs that are mixed of two samples. */
    private double[] ofSamples(double[] figure) {
        return IntStream.range(0, figure.length)
                .mapToDouble(run -> samples[run] == SweepTable.MIXED ? Double.NaN : figure[run])
                .toArray();
    }

    /**
     * With the interval of as many pairs as there are samples: runs that repeat a sample count once, the fewest that they may
     * be worth (Kish 1965, Survey Sampling, with runs of a sample all alike).
     */
    private Influence.RankCorrelation rank(double correlation, int count) {
        double[] interval =
                everyCombination ? new double[] {correlation, correlation} : Ranks.interval(correlation, count);
        return new Influence.RankCorrelation(correlation, interval[0], interval[1]);
    }

    /** What a variable does with the variables held that it is correlated with. */
    private Optional<Influence.Alone> alone(Variable variable, double[] given, double[] values, int count) {
        String name = variable.name();
        List<Correlation> of = table.sweep().correlations().stream()
                .filter(one -> one.rank() != 0
                        && (one.first().equals(name) || one.second().equals(name)))
                .toList();
        if (of.isEmpty()) {
            return Optional.empty();
        }
        List<double[]> held =
                of.stream().map(one -> table.input(other(one, name))).toList();
        double partial = Ranks.partialCorrelation(given, values, held);
        return Optional.of(new Influence.Alone(
                of.stream()
                        .map(one -> other(one, name) + " (" + Numbers.words(one.rank()) + ")")
                        .collect(Collectors.joining(", ")),
                rank(partial, count - held.size())));
    }

    private static String other(Correlation of, String name) {
        return of.first().equals(name) ? of.second() : of.first();
    }

    private Swing swing(Variable variable, double[] given, double[] values) {
        if (variable.numeric()) {
            return Swing.of(given, values, samples);
        }
        return hasNoOrder(variable) ? Swing.NONE : Swing.betweenValues(given, values, samples);
    }

    private Optional<SobolIndices> indices(String figure) {
        return table.sweep().design() instanceof Design.ForSobolIndices
                ? Optional.of(SobolIndices.of(table.figure(figure), variables.size()))
                : Optional.empty();
    }

    /**
     * What could not be ranked by its influence on a figure.
     *
     * @param figure a figure whose sensitivity is asked for
     * @return nothing if all that varies was ranked
     */
    public Optional<Unranked> unranked(String figure) {
        List<Variable> fields =
                variables.stream().filter(Influences::hasNoOrder).toList();
        if (fields.isEmpty() || table.sweep().design() instanceof Design.ForSobolIndices) {
            return Optional.empty();
        }
        double[] values = table.figure(figure);
        List<double[]> numbers = variables.stream()
                .filter(Variable::numeric)
                .map(variable -> table.input(variable.name()))
                .toList();
        List<double[]> choices = variables.stream()
                .filter(variable -> !variable.numeric() && !hasNoOrder(variable))
                .map(variable -> table.input(variable.name()))
                .toList();
        // Correlated numbers explain the same variation twice.
        double left = table.sweep().correlations().isEmpty() ? Unexplained.share(values, numbers, choices) : Double.NaN;
        double largest = Math.max(
                numbers.stream()
                        .mapToDouble(number -> 1 - Unexplained.share(values, List.of(number), List.of()))
                        .filter(Double::isFinite)
                        .max()
                        .orElse(0),
                choices.stream()
                        .mapToDouble(choice -> 1 - Unexplained.share(values, List.of(), List.of(choice)))
                        .filter(Double::isFinite)
                        .max()
                        .orElse(0));
        return Optional.of(new Unranked(fields.stream().map(Variable::name).toList(), left, !(left < largest)));
    }

    /** Numbers of random fields are names; high ones have nothing in common. */
    private static boolean hasNoOrder(Variable variable) {
        return !variable.numeric() && variable.variation().isDrawn();
    }
}
