package org.headfall.scenarios.sweep.page;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.headfall.scenarios.sweep.document.Aim;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.results.ChoiceSentences;
import org.headfall.scenarios.sweep.results.Numbers;
import org.headfall.scenarios.sweep.results.RankedChoices;
import org.headfall.scenarios.sweep.results.SweepFindings;
import org.headfall.scenarios.sweep.results.SweepTable;

/** Draws each run by two aims, the best compromises larger. */
final class TradeOffChart {

    /** More points than can be told apart make a page slow and no clearer. */
    private static final int MOST_DOTS = 2_000;

    private final SweepTable table;
    private final SweepFindings findings;

    TradeOffChart(SweepFindings findings) {
        this.findings = findings;
        table = findings.table();
    }

    List<Chart.Group> all() {
        List<Aim> aims = table.sweep().questions().tradeOff();
        if (aims.size() < 2) {
            return List.of();
        }
        KeptFigure first = table.sweep().figure(aims.get(0).figure());
        KeptFigure second = table.sweep().figure(aims.get(1).figure());
        if (findings.choices().isPresent()) {
            return List.of(ofChoices(findings.choices().get().traded()));
        }
        double[] a = table.figure(first.name());
        double[] b = table.figure(second.name());
        ChartScale across = ChartDrawing.across(a);
        ChartScale up = ChartDrawing.up(b);
        ChartDrawing drawing = new ChartDrawing().axes(across, up);
        List<Integer> best = findings.answers().compromises();
        int every = Math.max(1, a.length / MOST_DOTS);
        Set<Integer> front = new HashSet<>(best);
        for (int place = 0; place < a.length; place++) {
            boolean shown = front.contains(place) || place % every == 0;
            if (shown && Double.isFinite(a[place]) && Double.isFinite(b[place])) {
                drawing.dot(
                        front.contains(place) ? "best" : "run",
                        across.place(a[place]),
                        up.place(b[place]),
                        "run " + (place + 1) + ": " + Numbers.words(a[place]) + ", " + Numbers.words(b[place]));
            }
        }
        return List.of(new Chart.Group(
                "What one aim costs the other",
                best.size() + " of " + drawn(a, b)
                        + " runs, drawn larger, are beaten by no other in one aim without losing" + " in another."
                        + (every > 1 ? " Of the others one in " + every + " is drawn." : ""),
                List.of(drawing.named("What one aim costs the other", first.heading(), second.heading()))));
    }

    /** One point a choice, with the errors of both its values. */
    private Chart.Group ofChoices(List<RankedChoices.Traded> choices) {
        ChartScale across = ChartDrawing.across(ends(choices, 0));
        ChartScale up = ChartDrawing.up(ends(choices, 1));
        ChartDrawing drawing = new ChartDrawing().axes(across, up);
        for (RankedChoices.Traded choice : choices) {
            double a = choice.values().get(0);
            double b = choice.values().get(1);
            if (Double.isFinite(a) && Double.isFinite(b)) {
                double x = across.place(a);
                double y = up.place(b);
                double errorAcross = choice.errors().get(0);
                double errorUp = choice.errors().get(1);
                if (errorAcross > 0) {
                    drawing.line("error", ends(across, a, errorAcross), new double[] {y, y});
                }
                if (errorUp > 0) {
                    drawing.line("error", new double[] {x, x}, ends(up, b, errorUp));
                }
                drawing.dot(
                        choice.isCompromise() ? "best" : "run",
                        x,
                        y,
                        choice.name() + ": " + Numbers.words(a) + ", " + Numbers.words(b));
            }
        }
        long best = choices.stream().filter(RankedChoices.Traded::isCompromise).count();
        return new Chart.Group(
                "What one aim costs the other",
                "Each point is a choice over its samples, with the 95 % interval of sampling. " + best + " of "
                        + choices.size()
                        + ", drawn darker, are beaten by no other in one aim without losing in another."
                        + " That is by the values as they are: where intervals overlap, sampling may leave open which is"
                        + " better.",
                List.of(drawing.named("What one aim costs the other", heading(0), heading(1))));
    }

    private String heading(int of) {
        Aim aim = table.sweep().questions().tradeOff().get(of);
        return table.sweep().figure(aim.figure()).heading() + ", " + ChoiceSentences.over(aim);
    }

    private static double[] ends(List<RankedChoices.Traded> choices, int aim) {
        return choices.stream()
                .flatMapToDouble(choice -> {
                    double value = choice.values().get(aim);
                    double error = choice.errors().get(aim);
                    return DoubleStream.of(value - error, value, value + error);
                })
                .toArray();
    }

    private static double[] ends(ChartScale scale, double value, double error) {
        return new double[] {scale.place(value - error), scale.place(value + error)};
    }

    private static long drawn(double[] a, double[] b) {
        return IntStream.range(0, a.length)
                .filter(place -> Double.isFinite(a[place]) && Double.isFinite(b[place]))
                .count();
    }
}
