package org.headfall.scenarios.sweep.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.results.Influence;
import org.headfall.scenarios.sweep.results.SweepAnswers;
import org.headfall.scenarios.sweep.results.SweepTable;

/** Draws what figures depend on: how far they swing with each variable, and its part in their variance. */
final class InfluenceCharts {

    private static final double BAR = 0.6;
    private static final double LETTER = 4;

    private static final String BARS =
            "Each bar goes from the mean of the runs with the lowest tenth of the variable to that with the highest tenth, or"
                    + " from its value with the least mean to that with the greatest, all else varying as it does.";

    private final SweepTable table;
    private final SweepAnswers answers;

    InfluenceCharts(SweepTable table, SweepAnswers answers) {
        this.table = table;
        this.answers = answers;
    }

    List<Chart.Group> all() {
        Map<String, List<Influence>> byFigure = answers.influences().stream()
                .collect(Collectors.groupingBy(Influence::figure, LinkedHashMap::new, Collectors.toList()));
        List<Chart.Group> charts = new ArrayList<>();
        byFigure.forEach((name, influences) -> {
            KeptFigure figure = table.sweep().figure(name);
            String runs = " From " + table.finished(name) + " runs.";
            List<Influence> swings = influences.stream()
                    .filter(influence -> !Double.isNaN(influence.swing().length()))
                    .toList();
            if (!swings.isEmpty()) {
                charts.add(
                        new Chart.Group("What " + name + " depends on", BARS + runs, List.of(tornado(figure, swings))));
            }
            if (influences.get(0).total().isPresent()) {
                charts.add(new Chart.Group(
                        "How much of the variance of " + name + " each unknown makes",
                        "Upper bar: what would fall away on average if the unknown were known (first Sobol index). Lower"
                                + " bar: what would be left if all others were (total index). Thin lines: two standard"
                                + " errors of sampling." + runs,
                        List.of(indices(name, influences))));
            }
        });
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
                    influence.variable().name() + way(influence));
        }
        return drawing.named("What " + figure.name() + " depends on", figure.heading(), "");
    }

    private static String way(Influence influence) {
        if (!influence.variable().numeric()) {
            return " (between its values)";
        }
        return influence.swing().low() < influence.swing().high() ? " (rises with it)" : " (falls with it)";
    }

    private static Chart indices(String name, List<Influence> influences) {
        double[] ends = influences.stream()
                .flatMapToDouble(influence -> DoubleStream.of(
                        0, 1, influence.first().orElse(0), influence.total().orElse(0)))
                .toArray();
        ChartScale across = ChartDrawing.across(ends);
        ChartDrawing drawing = new ChartDrawing().acrossAxis(across);
        double height = (ChartDrawing.BOTTOM - ChartDrawing.TOP) / influences.size();
        for (int i = 0; i < influences.size(); i++) {
            Influence influence = influences.get(i);
            double top = ChartDrawing.TOP + i * height;
            double half = height * BAR / 2;
            double start = top + height - 2 * half;
            index(drawing, "rises", across, influence.first().orElse(0), influence.firstError(), start, start + half);
            index(
                    drawing,
                    "falls",
                    across,
                    influence.total().orElse(0),
                    influence.totalError(),
                    start + half,
                    start + 2 * half);
            drawing.label(
                    "start",
                    ChartDrawing.LEFT + LETTER,
                    start - LETTER,
                    influence.variable().name());
        }
        return drawing.named("Parts of the variance of " + name, "part of the variance", "");
    }

    private static void index(
            ChartDrawing drawing,
            String style,
            ChartScale across,
            double value,
            double error,
            double top,
            double bottom) {
        double zero = across.place(0);
        double end = across.place(value);
        drawing.bar(style, Math.min(zero, end), Math.max(zero, end), top, bottom);
        double middle = (top + bottom) / 2;
        drawing.line(
                "error",
                new double[] {across.place(value - 2 * error), across.place(value + 2 * error)},
                new double[] {middle, middle});
    }
}
