package org.headfall.scenarios.sweep.page;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.results.Direction;
import org.headfall.scenarios.sweep.results.Influence;
import org.headfall.scenarios.sweep.results.SweepFindings;
import org.headfall.scenarios.sweep.statistics.Swing;

/** Draws what figures depend on: how far they swing with each variable, and its part in their variance. */
final class InfluenceCharts {

    private static final double BAR = 0.6;
    private static final double LETTER = 4;
    private static final int LONGEST = 50;

    private static final String BARS =
            "Each bar goes from the mean of the runs with the lowest tenth of the variable to that with the highest tenth, or"
                    + " from its value with the least mean to that with the greatest, all else varying as it does.";
    private static final String ERRORS =
            " Thin lines: where the end of the bar may lie by sampling, 95 %. Dashed bars are not told apart from none.";

    private final SweepFindings findings;

    InfluenceCharts(SweepFindings findings) {
        this.findings = findings;
    }

    List<Chart.Group> all() {
        List<Chart.Group> charts = new ArrayList<>();
        findings.influences().forEach((name, influences) -> {
            KeptFigure figure = findings.table().sweep().figure(name);
            String runs = " From " + influences.get(0).samples() + " samples.";
            List<Influence> swings = influences.stream()
                    .filter(influence -> !Double.isNaN(influence.swing().length()))
                    .toList();
            if (!swings.isEmpty()) {
                charts.add(new Chart.Group(
                        "What " + name + " depends on", note(swings) + runs, List.of(tornado(figure, swings))));
            }
            if (influences.get(0).indices().total().isPresent()) {
                charts.add(new Chart.Group(
                        "How much of the variance of " + name + " each unknown makes",
                        "Upper bar: what would fall away on average if the unknown were known (first Sobol index). Lower"
                                + " bar: what would be left if all others were (total index). Thin lines: two standard"
                                + " errors of sampling.",
                        List.of(indices(name, influences))));
            }
        });
        return charts;
    }

    private static String note(List<Influence> swings) {
        boolean sampled =
                swings.stream().anyMatch(influence -> influence.swing().error() != 0);
        return BARS + (sampled ? ERRORS : " Every combination was run, so that nothing is left to sampling.");
    }

    private static Chart tornado(KeptFigure figure, List<Influence> influences) {
        double[] ends = influences.stream()
                .map(Influence::swing)
                .flatMapToDouble(swing -> DoubleStream.of(
                        swing.low(), swing.high(), swing.high() - swing.error(), swing.high() + swing.error()))
                .toArray();
        ChartScale across = ChartDrawing.across(ends);
        ChartDrawing drawing = new ChartDrawing().acrossAxis(across);
        double height = (ChartDrawing.BOTTOM - ChartDrawing.TOP) / influences.size();
        for (int i = 0; i < influences.size(); i++) {
            Influence influence = influences.get(i);
            Swing swing = influence.swing();
            double top = ChartDrawing.TOP + i * height;
            double start = top + height * (1 - BAR);
            double low = across.place(swing.low());
            double high = across.place(swing.high());
            drawing.bar(style(influence), Math.min(low, high), Math.max(low, high), start, top + height);
            if (swing.error() > 0) {
                error(drawing, across, swing.high(), swing.error(), (start + top + height) / 2);
            }
            drawing.label("start", LETTER, start - LETTER, label(influence));
        }
        return drawing.named("What " + figure.name() + " depends on", figure.heading(), "");
    }

    /** As much as fits into the width, in the larger letters of narrow pages too; the table says the rest. */
    private static String label(Influence influence) {
        String name = influence.variable().name();
        String whole = name + " (" + influence.shortWords() + ")";
        if (whole.length() <= LONGEST) {
            return whole;
        }
        return name.length() <= LONGEST ? name : name.substring(0, LONGEST - 1) + "…";
    }

    private static String style(Influence influence) {
        return influence
                .ends()
                .map(direction -> direction == Direction.RISING ? "rises" : "falls")
                .orElse("unsure");
    }

    private static void error(ChartDrawing drawing, ChartScale across, double value, double error, double y) {
        drawing.line(
                "error", new double[] {across.place(value - error), across.place(value + error)}, new double[] {y, y});
    }

    private static Chart indices(String name, List<Influence> influences) {
        double[] ends = influences.stream()
                .flatMapToDouble(influence -> DoubleStream.of(
                        0,
                        1,
                        influence.indices().first().orElse(0),
                        influence.indices().total().orElse(0)))
                .toArray();
        ChartScale across = ChartDrawing.across(ends);
        ChartDrawing drawing = new ChartDrawing().acrossAxis(across);
        double height = (ChartDrawing.BOTTOM - ChartDrawing.TOP) / influences.size();
        for (int i = 0; i < influences.size(); i++) {
            Influence influence = influences.get(i);
            double top = ChartDrawing.TOP + i * height;
            double half = height * BAR / 2;
            double start = top + height - 2 * half;
            Influence.Indices parts = influence.indices();
            index(drawing, "rises", across, parts.first().orElse(0), parts.firstError(), start, start + half);
            index(
                    drawing,
                    "falls",
                    across,
                    parts.total().orElse(0),
                    parts.totalError(),
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
        error(drawing, across, value, 2 * error, (top + bottom) / 2);
    }
}
