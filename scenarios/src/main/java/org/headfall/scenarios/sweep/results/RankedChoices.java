package org.headfall.scenarios.sweep.results;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.headfall.scenarios.sweep.document.Aim;
import org.headfall.scenarios.sweep.document.Design;
import org.headfall.scenarios.sweep.statistics.ChoiceValues;
import org.headfall.scenarios.sweep.statistics.Compromises;
import org.headfall.scenarios.sweep.statistics.Share;

/**
 * Choices that got the same samples of what is unknown, put in order by the aim asked for over those samples. One run says
 * little of a choice: it may be the best for its sample alone.
 */
public final class RankedChoices {

    private final SweepTable table;
    private final int[] samples;
    private final List<String> names;
    private final List<List<Integer>> places;
    private final List<double[]> margins;
    private final Optional<ChoiceValues> ranking;
    private final List<ChoiceValues> tradeOff;

    private RankedChoices(SweepTable table, SweepAnswers answers) {
        this.table = table;
        samples = table.samples();
        Map<String, List<Integer>> choices = answers.choices();
        names = List.copyOf(choices.keySet());
        places = List.copyOf(choices.values());
        margins = answers.margins();
        ranking = table.sweep().questions().ranking().map(this::values);
        tradeOff =
                table.sweep().questions().tradeOff().stream().map(this::values).toList();
    }

    /**
     * The choices of a sweep.
     *
     * @param table the runs
     * @return nothing if samples are not repeated for choices
     */
    public static Optional<RankedChoices> of(SweepTable table) {
        boolean repeated = table.sweep().design() instanceof Design.Sampled sampled
                && !sampled.forEachOf().isEmpty();
        return repeated ? Optional.of(new RankedChoices(table, new SweepAnswers(table))) : Optional.empty();
    }

    /**
     * What a choice is worth.
     *
     * @param name values of the listed variables that its runs share
     * @param places its runs that have figures, as places from 0
     * @param value mean of the figure over the samples, or the value that is reached in the share of them that was asked for
     * @param error half of the width of the 95 per cent interval of the value by sampling, NaN of fewer than two samples
     * @param likeTheBest whether it is not told apart from the best, or is the best
     * @param keepsLimits in how many of its runs all limits are kept of which margins are kept, of those runs that could be
     *     judged
     */
    public record Choice(
            String name, List<Integer> places, double value, double error, boolean likeTheBest, Share keepsLimits) {
        /** Copies the list. */
        public Choice {
            places = List.copyOf(places);
        }
    }

    /**
     * The choices from the best on by the ranking asked for; those without figures or with figures of fewer than half as many
     * samples as others, and all if none is asked for, are left out.
     */
    public List<Choice> ranked() {
        return ranking.map(values ->
                        ranked(values, table.sweep().questions().ranking().orElseThrow()))
                .orElse(List.of());
    }

    private List<Choice> ranked(ChoiceValues values, Aim aim) {
        double sign = aim.largest() ? 1 : -1;
        double resolution = Resolution.of(table.sweep().figure(aim.figure()), table.figure(aim.figure()));
        int[] order = IntStream.range(0, names.size())
                .filter(choice -> Double.isFinite(values.value(choice)))
                .boxed()
                .sorted(Comparator.comparingDouble(choice -> -sign * values.value(choice)))
                .mapToInt(Integer::intValue)
                .toArray();
        return Arrays.stream(order)
                .mapToObj(choice -> choice(
                        choice,
                        values,
                        Math.abs(values.value(order[0]) - values.value(choice)) <= resolution
                                || !values.areToldApart(order[0], choice)))
                .toList();
    }

    private Choice choice(int choice, ChoiceValues values, boolean likeTheBest) {
        List<Integer> of = places.get(choice);
        return new Choice(
                names.get(choice),
                of,
                values.value(choice),
                values.error(choice),
                likeTheBest,
                LimitsKept.share(margins, of));
    }

    /** How many samples the values of the ranking rest on: those of which every choice that is compared has the figure. */
    public int samples() {
        return ranking.map(ChoiceValues::samples).orElse(0);
    }

    /** Whether there are limits whose margins are kept. */
    public boolean hasLimits() {
        return !margins.isEmpty();
    }

    /** Values of all choices by an aim, in the order of the document. */
    private ChoiceValues values(Aim aim) {
        double[] figure = table.figure(aim.figure());
        int count = Arrays.stream(samples).max().orElse(-1) + 1;
        double[][] figures = new double[names.size()][count];
        for (int choice = 0; choice < figures.length; choice++) {
            Arrays.fill(figures[choice], Double.NaN);
            for (int place : places.get(choice)) {
                figures[choice][samples[place]] = figure[place];
            }
        }
        unfinished(aim).forEach(choice -> Arrays.fill(figures[choice], Double.NaN));
        return new ChoiceValues(figures, below(aim));
    }

    /**
     * Choices with figures of fewer than half as many samples as the choice that has most, as a sweep that was cut short or runs
     * that failed leave them. Only samples that all choices share are compared, so they would take those of the others with
     * them. Half is this program's choice, no rule.
     */
    private List<Integer> unfinished(Aim aim) {
        double[] figure = table.figure(aim.figure());
        long[] counts = places.stream()
                .mapToLong(of -> of.stream()
                        .filter(place -> Double.isFinite(figure[place]))
                        .count())
                .toArray();
        long most = Arrays.stream(counts).max().orElse(0);
        return IntStream.range(0, counts.length)
                .filter(choice -> 2 * counts[choice] < most)
                .boxed()
                .toList();
    }

    /** Names of the choices that are not compared by an aim; see {@link #unfinished}. */
    List<String> leftOut(Aim aim) {
        return unfinished(aim).stream().map(names::get).toList();
    }

    /** The share of the samples below the value that the share asked for reaches: what is not as good lies on the other side. */
    private static OptionalDouble below(Aim aim) {
        return aim.reachedIn().isPresent()
                ? OptionalDouble.of(
                        aim.largest()
                                ? 1 - aim.reachedIn().getAsDouble()
                                : aim.reachedIn().getAsDouble())
                : OptionalDouble.empty();
    }

    /**
     * A choice by the aims of the trade-off.
     *
     * @param name values of the listed variables that its runs share
     * @param places its runs that have figures, as places from 0
     * @param values its value by each aim
     * @param errors half of the width of the 95 per cent interval of each value by sampling
     * @param isCompromise whether no other choice is better in one aim without being worse in another
     */
    public record Traded(
            String name, List<Integer> places, List<Double> values, List<Double> errors, boolean isCompromise) {
        /** Copies the lists. */
        public Traded {
            places = List.copyOf(places);
            values = List.copyOf(values);
            errors = List.copyOf(errors);
        }
    }

    /**
     * All choices by the aims of the trade-off, in the order of the document, without values where too few of their runs have
     * figures; none if it is not asked for.
     */
    public List<Traded> traded() {
        List<Aim> aims = table.sweep().questions().tradeOff();
        if (aims.isEmpty()) {
            return List.of();
        }
        double[][] goodness = new double[names.size()][];
        Arrays.setAll(
                goodness,
                choice -> IntStream.range(0, aims.size())
                        .mapToDouble(aim -> (aims.get(aim).largest() ? 1 : -1)
                                * tradeOff.get(aim).value(choice))
                        .toArray());
        int[] best = Compromises.among(goodness);
        return IntStream.range(0, names.size())
                .mapToObj(choice -> new Traded(
                        names.get(choice),
                        places.get(choice),
                        numbers(tradeOff, of -> of.value(choice)),
                        numbers(tradeOff, of -> of.error(choice)),
                        Arrays.stream(best).anyMatch(of -> of == choice)))
                .toList();
    }

    private static List<Double> numbers(List<ChoiceValues> of, ToDoubleFunction<ChoiceValues> number) {
        return of.stream().map(number::applyAsDouble).toList();
    }
}
