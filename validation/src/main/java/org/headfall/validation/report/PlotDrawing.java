package org.headfall.validation.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.headfall.validation.check.Plot;
import org.headfall.validation.check.Series;

/**
 * Draws a plot as SVG in black and grey: published solutions as lines, told apart by their dashes, ours as hollow marks,
 * told apart by their shape.
 */
final class PlotDrawing {

    private static final double WIDTH = 640;
    private static final double LEFT = 66;
    private static final double RIGHT = 28;
    private static final double TOP = 12;
    private static final double HEIGHT_OF_AXES = 290;
    private static final double LEGEND_LINE = 17;
    private static final String[] DASHES = {"", "9 4", "3 3", "12 4 3 4", "1.5 4"};
    private static final double MARK = 3.6;

    private final Plot plot;
    private final Ticks x;
    private final Ticks y;
    private final StringBuilder svg = new StringBuilder();

    private PlotDrawing(Plot plot) {
        this.plot = plot;
        List<Double> xs = new ArrayList<>();
        List<Double> ys = new ArrayList<>();
        for (Series series : plot.series()) {
            for (int i = 0; i < series.x().length; i++) {
                xs.add(series.x()[i]);
                ys.add(series.y()[i]);
            }
        }
        x = Ticks.around(plot.x(), xs);
        y = Ticks.around(plot.y(), ys);
    }

    /** The plot as an svg element. */
    static String of(Plot plot) {
        return new PlotDrawing(plot).draw();
    }

    private String draw() {
        double legendTop = TOP + HEIGHT_OF_AXES + 52;
        int legendRows = (plot.series().size() + 1) / 2;
        double height = legendTop + LEGEND_LINE * legendRows;
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %.0f %.0f\" role=\"img\" aria-label=\"%s\">",
                WIDTH, height, escaped(plot.title()));
        axes();
        plot.series().stream()
                .filter(series -> series.kind() == Series.Kind.PUBLISHED)
                .forEach(this::line);
        plot.series().stream()
                .filter(series -> series.kind() == Series.Kind.OURS)
                .forEach(this::marks);
        for (int i = 0; i < plot.series().size(); i++) {
            int row = i / 2;
            double left = LEFT + (i % 2) * (WIDTH - LEFT) / 2;
            legend(plot.series().get(i), left, legendTop + LEGEND_LINE * row);
        }
        svg.append("</svg>");
        return svg.toString();
    }

    private double right(double value) {
        return LEFT + x.place(value) * (WIDTH - LEFT - RIGHT);
    }

    private double down(double value) {
        return TOP + (1 - y.place(value)) * HEIGHT_OF_AXES;
    }

    private void axes() {
        double bottom = TOP + HEIGHT_OF_AXES;
        for (double tick : x.values()) {
            add("<path class=\"grid\" d=\"M%.1f %.1fV%.1f\"/>", right(tick), TOP, bottom + 4);
            add(
                    "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\">%s</text>",
                    right(tick), bottom + 17, x.label(tick));
        }
        for (double tick : y.values()) {
            add("<path class=\"grid\" d=\"M%.1f %.1fH%.1f\"/>", LEFT - 4, down(tick), WIDTH - RIGHT);
            add("<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"end\">%s</text>", LEFT - 7, down(tick) + 4, y.label(tick));
        }
        add("<path class=\"axis\" d=\"M%.1f %.1fV%.1fH%.1f\"/>", LEFT, TOP, bottom, WIDTH - RIGHT);
        double middle = LEFT + (WIDTH - LEFT - RIGHT) / 2;
        add(
                "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\">%s</text>",
                middle, bottom + 34, escaped(plot.x().label()));
        double centre = TOP + HEIGHT_OF_AXES / 2;
        add(
                "<text transform=\"translate(13 %.1f) rotate(-90)\" text-anchor=\"middle\">%s</text>",
                centre, escaped(plot.y().label()));
    }

    private void line(Series series) {
        StringBuilder path = new StringBuilder();
        boolean pen = false;
        for (int i = 0; i < series.x().length; i++) {
            double across = right(series.x()[i]);
            double along = down(series.y()[i]);
            if (Double.isFinite(across) && Double.isFinite(along)) {
                path.append(String.format(Locale.ROOT, "%s%.1f %.1f", pen ? "L" : "M", across, along));
                pen = true;
            } else {
                pen = false;
            }
        }
        add("<path class=\"published\" stroke-dasharray=\"%s\" d=\"%s\"/>", dashes(series), path);
    }

    private static String dashes(Series series) {
        String dashes = DASHES[series.pattern() % DASHES.length];
        return dashes.isEmpty() ? "none" : dashes;
    }

    private void marks(Series series) {
        for (int i = 0; i < series.x().length; i++) {
            double across = right(series.x()[i]);
            double along = down(series.y()[i]);
            if (Double.isFinite(across) && Double.isFinite(along)) {
                mark(series.pattern(), across, along);
            }
        }
    }

    private void mark(int pattern, double across, double along) {
        String shape = switch (pattern % 5) {
            case 0 -> "m-%1$.1f 0a%1$.1f %1$.1f 0 1 0 %2$.1f 0a%1$.1f %1$.1f 0 1 0 -%2$.1f 0z";
            case 1 -> "m-%1$.1f -%1$.1fh%2$.1fv%2$.1fh-%2$.1fz";
            case 2 -> "m0 -%1$.1fl%1$.1f %2$.1fh-%2$.1fz";
            case 3 -> "m0 -%1$.1fl%1$.1f %1$.1fl-%1$.1f %1$.1fl-%1$.1f -%1$.1fz";
            default -> "m-%1$.1f -%1$.1fl%2$.1f %2$.1fm0 -%2$.1fl-%2$.1f %2$.1f";
        };
        add(
                "<path class=\"ours\" d=\"M%.1f %.1f%s\"/>",
                across, along, String.format(Locale.ROOT, shape, MARK, 2 * MARK));
    }

    private void legend(Series series, double left, double baseline) {
        if (series.kind() == Series.Kind.PUBLISHED) {
            add(
                    "<path class=\"published\" stroke-dasharray=\"%s\" d=\"M%.1f %.1fh30\"/>",
                    dashes(series), left, baseline - 4);
        } else {
            mark(series.pattern(), left + 15, baseline - 4);
        }
        add("<text x=\"%.1f\" y=\"%.1f\">%s</text>", left + 38, baseline, escaped(series.name()));
    }

    private void add(String format, Object... values) {
        svg.append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
