package org.headfall.scenarios.sweep.page;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.headfall.scenarios.sweep.results.Numbers;

/** Collects the shapes of a chart. */
final class ChartDrawing {

    static final double LEFT = 70;
    static final double RIGHT = Chart.WIDTH - 15.0;
    static final double TOP = 12;
    static final double BOTTOM = Chart.HEIGHT - 45.0;

    private static final double TICK_GAP = 16;
    private static final double LETTER = 4;

    private final List<Chart.Line> lines = new ArrayList<>();
    private final List<Chart.Dot> dots = new ArrayList<>();
    private final List<Chart.Label> labels = new ArrayList<>();

    static ChartScale across(double[] values) {
        return ChartScale.of(values, LEFT, RIGHT);
    }

    static ChartScale up(double[] values) {
        return ChartScale.of(values, BOTTOM, TOP);
    }

    ChartDrawing axes(ChartScale across, ChartScale up) {
        acrossAxis(across);
        for (double tick : up.ticks()) {
            String y = Numbers.place(up.place(tick));
            lines.add(new Chart.Line("grid", "M" + Numbers.place(LEFT) + " " + y + "H" + Numbers.place(RIGHT)));
            labels.add(new Chart.Label(
                    "end", Numbers.place(LEFT - LETTER), Numbers.place(up.place(tick) + LETTER), Numbers.words(tick)));
        }
        return this;
    }

    ChartDrawing acrossAxis(ChartScale across) {
        for (double tick : across.ticks()) {
            String x = Numbers.place(across.place(tick));
            lines.add(new Chart.Line("grid", "M" + x + " " + Numbers.place(TOP) + "V" + Numbers.place(BOTTOM)));
            labels.add(new Chart.Label("middle", x, Numbers.place(BOTTOM + TICK_GAP), Numbers.words(tick)));
        }
        lines.add(new Chart.Line(
                "axis",
                "M" + Numbers.place(LEFT) + " " + Numbers.place(TOP) + "V" + Numbers.place(BOTTOM) + "H"
                        + Numbers.place(RIGHT)));
        return this;
    }

    ChartDrawing line(String style, double[] x, double[] y) {
        StringBuilder path = new StringBuilder();
        IntStream.range(0, x.length).filter(i -> Double.isFinite(y[i])).forEach(i -> append(path, x[i], y[i]));
        if (!path.isEmpty()) {
            lines.add(new Chart.Line(style, path.toString()));
        }
        return this;
    }

    ChartDrawing bar(String style, double fromX, double toX, double top, double bottom) {
        lines.add(new Chart.Line(
                style,
                "M" + Numbers.place(fromX) + " " + Numbers.place(top) + "H" + Numbers.place(toX) + "V"
                        + Numbers.place(bottom) + "H" + Numbers.place(fromX) + "Z"));
        return this;
    }

    ChartDrawing dot(String style, double x, double y, String title) {
        dots.add(new Chart.Dot(style, Numbers.place(x), Numbers.place(y), title));
        return this;
    }

    ChartDrawing label(String anchor, double x, double y, String text) {
        labels.add(new Chart.Label(anchor, Numbers.place(x), Numbers.place(y), text));
        return this;
    }

    /** A path that has been drawn elsewhere; nothing if it is empty. */
    ChartDrawing path(String style, String path) {
        if (!path.isEmpty()) {
            lines.add(new Chart.Line(style, path));
        }
        return this;
    }

    /** The area between two lines. */
    ChartDrawing band(double[] x, double[] low, double[] high) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < x.length; i++) {
            append(path, x[i], low[i]);
        }
        for (int i = x.length - 1; i >= 0; i--) {
            append(path, x[i], high[i]);
        }
        if (!path.isEmpty()) {
            lines.add(new Chart.Line("band", path.append('Z').toString()));
        }
        return this;
    }

    private static void append(StringBuilder path, double x, double y) {
        if (Double.isFinite(x) && Double.isFinite(y)) {
            path.append(path.isEmpty() ? "M" : "L")
                    .append(Numbers.place(x))
                    .append(' ')
                    .append(Numbers.place(y));
        }
    }

    Chart named(String title, String across, String up) {
        return new Chart(title, across, up, lines, dots, labels);
    }
}
