package org.headfall.scenarios.sweep.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.sweep.document.Aim;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.document.Variation;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.results.Influence;
import org.headfall.scenarios.sweep.results.SweepAnswers;
import org.headfall.scenarios.sweep.results.SweepTable;
import org.headfall.scenarios.sweep.statistics.Ranks;

/** Draws the charts of a sweep: curves over a choice, the trade-off, and what figures depend on. */
final class SweepCharts {

    private static final double LOW = 0.1;
    private static final double MIDDLE = 0.5;
    private static final double HIGH = 0.9;
    private static final double BAR = 0.6;
    private static final double LETTER = 4;

    /** More points than can be told apart make a page slow and no clearer. */
    private static final int MOST_DOTS = 2_000;

    private final SweepTable table;
    private final SweepAnswers answers;

    SweepCharts(SweepTable table, SweepAnswers answers) {
        this.table = table;
        this.answers = answers;
    }

    List<Chart> all() {
        List<Chart> charts = new ArrayList<>();
        charts.addAll(curves());
        charts.addAll(tradeOff());
        charts.addAll(tornadoes());
        return charts;
    }

    private KeptFigure figure(String name) {
        return table.sweep().figures().stream()
                .filter(figure -> figure.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no figure is called " + name));
    }

    /** Each figure that something is asked of, over each numeric variable with some listed values. */
    private List<Chart> curves() {
        List<Chart> charts = new ArrayList<>();
        for (Variable variable : table.sweep().variables()) {
            if (variable.numeric() && variable.variation() instanceof Variation.Listed) {
                asked().forEach(name -> curve(variable, figure(name)).ifPresent(charts::add));
            }
        }
        return charts;
    }

    private Set<String> asked() {
        Set<String> names = new LinkedHashSet<>();
        table.sweep().questions().ranking().ifPresent(aim -> names.add(aim.figure()));
        table.sweep().questions().tradeOff().forEach(aim -> names.add(aim.figure()));
        names.addAll(table.sweep().questions().sensitivity());
        return names;
    }

    private Optional<Chart> curve(Variable variable, KeptFigure figure) {
        double[] values = table.figure(figure.name());
        double[] given = table.input(variable.name());
        Map<Double, List<Double>> byValue = new TreeMap<>();
        for (int place = 0; place < values.length; place++) {
            if (Double.isFinite(values[place])) {
                byValue.computeIfAbsent(given[place], value -> new ArrayList<>())
                        .add(values[place]);
            }
        }
        if (byValue.size() < 2) {
            return Optional.empty();
        }
        double[] at = byValue.keySet().stream().mapToDouble(Double::doubleValue).toArray();
        double[] low = quantiles(byValue, LOW);
        double[] middle = quantiles(byValue, MIDDLE);
        double[] high = quantiles(byValue, HIGH);
        ChartScale across = ChartDrawing.across(at);
        ChartScale up = ChartDrawing.up(
                DoubleStream.concat(Arrays.stream(low), Arrays.stream(high)).toArray());
        double[] x = Arrays.stream(at).map(across::place).toArray();
        ChartDrawing drawing = new ChartDrawing()
                .axes(across, up)
                .line("low", x, Arrays.stream(low).map(up::place).toArray())
                .line("high", x, Arrays.stream(high).map(up::place).toArray())
                .line("middle", x, Arrays.stream(middle).map(up::place).toArray());
        return Optional.of(drawing.named(
                figure.name() + " by " + variable.name(),
                "Middle line: half of the runs lie below. Dashed lines: a tenth below the lower, a tenth above the upper.",
                variable.heading(),
                figure.heading()));
    }

    private static double[] quantiles(Map<Double, List<Double>> byValue, double share) {
        return byValue.values().stream()
                .mapToDouble(values -> Ranks.quantile(
                        values.stream().mapToDouble(Double::doubleValue).toArray(), share))
                .toArray();
    }

    private List<Chart> tradeOff() {
        List<Aim> aims = table.sweep().questions().tradeOff();
        if (aims.size() < 2) {
            return List.of();
        }
        KeptFigure first = figure(aims.get(0).figure());
        KeptFigure second = figure(aims.get(1).figure());
        double[] a = table.figure(first.name());
        double[] b = table.figure(second.name());
        ChartScale across = ChartDrawing.across(a);
        ChartScale up = ChartDrawing.up(b);
        ChartDrawing drawing = new ChartDrawing().axes(across, up);
        List<Integer> best = answers.compromises();
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
        return List.of(drawing.named(
                "What one aim costs the other",
                best.size() + " runs, drawn larger, are beaten by no other in one aim without losing in another."
                        + (every > 1 ? " Of the others one in " + every + " is drawn." : ""),
                first.heading(),
                second.heading()));
    }

    private List<Chart> tornadoes() {
        Map<String, List<Influence>> byFigure = answers.influences().stream()
                .collect(Collectors.groupingBy(Influence::figure, LinkedHashMap::new, Collectors.toList()));
        List<Chart> charts = new ArrayList<>();
        byFigure.forEach((name, influences) -> charts.add(tornado(figure(name), influences)));
        return charts;
    }

    private static Chart tornado(KeptFigure figure, List<Influence> influences) {
        double[] ends = influences.stream()
                .flatMapToDouble(influence -> DoubleStream.of(
                        influence.swing().low(), influence.swing().high()))
                .toArray();
        ChartScale across = ChartDrawing.across(ends);
        ChartDrawing drawing = new ChartDrawing().acrossAxis(across);
        double height = (ChartDrawing.BOTTOM - ChartDrawing.TOP) / influences.size();
        for (int i = 0; i < influences.size(); i++) {
            Influence influence = influences.get(i);
            double top = ChartDrawing.TOP + i * height;
            double low = across.place(influence.swing().low());
            double high = across.place(influence.swing().high());
            drawing.bar(
                    low < high ? "rises" : "falls",
                    Math.min(low, high),
                    Math.max(low, high),
                    top + height * (1 - BAR),
                    top + height);
            drawing.label(
                    "start",
                    ChartDrawing.LEFT + LETTER,
                    top + height * (1 - BAR) - LETTER,
                    influence.variable() + (low < high ? " (rises with it)" : " (falls with it)"));
        }
        return drawing.named(
                "What " + figure.name() + " depends on",
                "Each bar goes from the mean of the runs with the lowest tenth of the variable to that with the highest"
                        + " tenth, all else varying as it does.",
                figure.heading(),
                "");
    }
}
