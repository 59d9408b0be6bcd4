package org.headfall.scenarios.sweep.results;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.headfall.scenarios.sweep.document.Aim;
import org.headfall.scenarios.sweep.document.Design;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.Threshold;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.figures.LimitFigure;
import org.headfall.scenarios.sweep.statistics.Compromises;
import org.headfall.scenarios.sweep.statistics.Share;

/** Answers what a sweep asks, of the runs that have figures. */
public final class SweepAnswers {

    private final SweepTable table;

    /**
     * Answers of a table.
     *
     * @param table the table
     */
    public SweepAnswers(SweepTable table) {
        this.table = table;
    }

    /** The runs from the best on by the ranking asked for, as places from 0; none if no ranking is asked for. */
    public List<Integer> ranked() {
        Optional<Aim> aim = table.sweep().questions().ranking();
        if (aim.isEmpty()) {
            return List.of();
        }
        double[] goodness = goodness(aim.get());
        return IntStream.range(0, goodness.length)
                .filter(place -> !Double.isNaN(goodness[place]))
                .boxed()
                .sorted(Comparator.comparingDouble(place -> -goodness[place]))
                .toList();
    }

    /** The best compromises between the aims, as places from 0. */
    public List<Integer> compromises() {
        List<Aim> aims = table.sweep().questions().tradeOff();
        if (aims.isEmpty()) {
            return List.of();
        }
        List<double[]> goodness = aims.stream().map(this::goodness).toList();
        double[][] byRun = new double[table.runs().size()][];
        Arrays.setAll(
                byRun, place -> goodness.stream().mapToDouble(of -> of[place]).toArray());
        return Arrays.stream(Compromises.among(byRun)).boxed().toList();
    }

    private double[] goodness(Aim aim) {
        double sign = aim.largest() ? 1 : -1;
        return Arrays.stream(table.figure(aim.figure()))
                .map(value -> sign * value)
                .toArray();
    }

    /** Crossing of each limit and passing of each bound: by choice where samples were taken for each choice. */
    public List<Likelihood> likelihoods() {
        List<Likelihood> likelihoods = new ArrayList<>();
        for (KeptFigure figure : table.sweep().figures()) {
            if (figure instanceof LimitFigure limit && limit.aspect() == LimitFigure.Aspect.MARGIN) {
                double[] margins = table.figure(figure.name());
                String what = "Limit \"" + limit.limit() + "\" crossed at " + limit.place();
                add(likelihoods, what, place -> !Double.isNaN(margins[place]), place -> margins[place] < 0);
            }
        }
        for (Threshold threshold : table.sweep().questions().thresholds()) {
            double[] values = table.figure(threshold.figure());
            String what = threshold.figure() + (threshold.above() ? " above " : " below ") + bound(threshold);
            double sign = threshold.above() ? 1 : -1;
            add(
                    likelihoods,
                    what,
                    place -> !Double.isNaN(values[place]),
                    place -> sign * (values[place] - threshold.bound()) > 0);
        }
        return likelihoods;
    }

    private String bound(Threshold threshold) {
        String unit = table.sweep().figures().stream()
                .filter(figure -> figure.name().equals(threshold.figure()))
                .map(KeptFigure::unit)
                .findFirst()
                .orElse("");
        double bound = threshold.bound();
        String number = bound == Math.rint(bound) ? Long.toString((long) bound) : Double.toString(bound);
        return unit.isEmpty() ? number : number + " " + unit;
    }

    private void add(List<Likelihood> likelihoods, String what, IntPredicate known, IntPredicate happens) {
        boolean sampled = isSampled();
        choices().forEach((choice, places) -> {
            List<Integer> of = places.stream().filter(known::test).toList();
            int count = (int) of.stream().filter(happens::test).count();
            likelihoods.add(new Likelihood(what, choice, new Share(count, of.size()), sampled));
        });
    }

    /** Whether runs are samples of what is unknown, so that shares of them are probabilities. */
    public boolean isSampled() {
        return !(table.sweep().design() instanceof Design.FullFactorial)
                && table.sweep().variables().stream()
                        .anyMatch(variable -> variable.variation().isDrawn());
    }

    /**
     * Places of the runs by the values that samples were taken for; all runs together if there are none. Runs of one choice
     * are independent samples: those that Sobol indices mix of two samples are left out (Saltelli and others 2010, Computer
     * Physics Communications 181, 259-270: the rows of the sets A and B alone are independent).
     */
    public Map<String, List<Integer>> choices() {
        List<String> chosen =
                table.sweep().design() instanceof Design.Sampled sampled ? sampled.forEachOf() : List.of();
        int[] samples = table.samples();
        Map<String, List<Integer>> choices = new LinkedHashMap<>();
        for (int place = 0; place < table.runs().size(); place++) {
            if (table.isFinished(place) && samples[place] != SweepTable.MIXED) {
                choices.computeIfAbsent(words(place, chosen), choice -> new ArrayList<>())
                        .add(place);
            }
        }
        return choices;
    }

    private String words(int place, List<String> names) {
        Map<Variable, Input> inputs = names.isEmpty() ? Map.of() : table.runs().get(place);
        return inputs.entrySet().stream()
                .filter(input -> names.contains(input.getKey().name()))
                .map(input -> input.getKey().name() + " " + Choices.inSentence(input.getKey(), input.getValue()))
                .collect(Collectors.joining(", "));
    }

    /**
     * The best run by the ranking asked for that crosses none of the limits of which margins are kept.
     *
     * @return its place from 0; nothing if every run crosses one or lacks a margin
     */
    public Optional<Integer> bestWithinLimits() {
        List<double[]> margins = margins();
        return ranked().stream()
                .filter(place -> margins.stream().allMatch(margin -> margin[place] >= 0))
                .findFirst();
    }

    /** The kept margins of all limits. */
    List<double[]> margins() {
        return table.sweep().figures().stream()
                .filter(figure -> figure instanceof LimitFigure limit && limit.aspect() == LimitFigure.Aspect.MARGIN)
                .map(figure -> table.figure(figure.name()))
                .toList();
    }

    /**
     * What the best run by the ranking says nothing of: whether it keeps the limits, and which is the best that does.
     *
     * @return a sentence; empty if nothing is ranked, no limit was kept or the best run keeps them all
     */
    public String limitsOfTheBest() {
        List<Integer> ranked = ranked();
        Optional<Integer> within = bestWithinLimits();
        if (ranked.isEmpty() || margins().isEmpty() || within.equals(Optional.of(ranked.get(0)))) {
            return "";
        }
        String crossed = "Run " + (ranked.get(0) + 1) + " crosses a limit or lacks a margin; ";
        return crossed
                + within.map(place -> "the best that keeps all limits is run " + (place + 1) + ".")
                        .orElse("none of the " + ranked.size() + " runs keeps all limits.");
    }

    /** How many runs are as good as the best by the ranking asked for, itself included. */
    public int sharingTheBest() {
        List<Integer> ranked = ranked();
        if (ranked.isEmpty()) {
            return 0;
        }
        double[] values =
                table.figure(table.sweep().questions().ranking().orElseThrow().figure());
        double best = values[ranked.get(0)];
        return (int) ranked.stream().filter(place -> values[place] == best).count();
    }
}
