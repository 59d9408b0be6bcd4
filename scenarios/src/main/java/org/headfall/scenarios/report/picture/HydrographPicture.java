package org.headfall.scenarios.report.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.report.content.Hydrograph;
import org.headfall.scenarios.report.content.ReferenceLevel;
import org.headfall.scenarios.report.content.ReportContent;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.Styler;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** Levels of one site over time, with the levels to compare them with that lie near, drawn by XChart. */
final class HydrographPicture implements Picture {

    private static final int WIDTH = 960;
    private static final int HEIGHT = 480;

    /** Room about the levels, as a share of their range, in which levels to compare with are drawn. */
    private static final double ROOM = 1.2;

    private final ReportContent content;
    private final Hydrograph hydrograph;

    HydrographPicture(ReportContent content, Hydrograph hydrograph) {
        this.content = content;
        this.hydrograph = hydrograph;
    }

    @Override
    public int width() {
        return WIDTH;
    }

    @Override
    public int height() {
        return HEIGHT;
    }

    @Override
    public void draw(Graphics2D graphics) {
        XYChart chart = new XYChartBuilder()
                .width(WIDTH)
                .height(HEIGHT)
                .title(Lettering.printable(hydrograph.site(), 60))
                .yAxisTitle("m above datum")
                .build();
        style(chart.getStyler());
        List<Double> years = years();
        add(chart, years, "Head in the aquifer", hydrograph.aquiferHead(), new Color(0x4b4b8f), 8, 4);
        add(chart, years, "Level in the bore", hydrograph.waterLevel(), new Color(0x1f6f9c));
        hydrograph.references().stream()
                .filter(this::isNear)
                .forEach(reference -> addReference(chart, years, reference));
        addMeasured(chart);
        chart.paint(graphics, WIDTH, HEIGHT);
    }

    private static void style(XYStyler styler) {
        styler.setChartBackgroundColor(Color.WHITE);
        styler.setLegendPosition(Styler.LegendPosition.OutsideS);
        styler.setLegendLayout(Styler.LegendLayout.Horizontal);
        styler.setLegendBorderColor(Color.WHITE);
        styler.setChartTitleFont(new Font(Font.SANS_SERIF, Font.BOLD, 16));
        styler.setLegendFont(new Font(Font.SANS_SERIF, Font.PLAIN, 12));
        styler.setXAxisDecimalPattern("0.#");
        styler.setPlotGridLinesColor(Lettering.LINE);
        styler.setAxisTickLabelsFont(new Font(Font.SANS_SERIF, Font.PLAIN, 12));
        styler.setAxisTitleFont(new Font(Font.SANS_SERIF, Font.PLAIN, 12));
    }

    private List<Double> years() {
        return Arrays.stream(hydrograph.days()).mapToObj(this::year).toList();
    }

    /** A day as a year and its part, so that ticks stand where years begin. */
    private double year(double day) {
        LocalDate date = content.heading().start().plusDays((long) Math.floor(day));
        return date.getYear() + (date.getDayOfYear() - 1 + day - Math.floor(day)) / date.lengthOfYear();
    }

    private static void add(
            XYChart chart, List<Double> years, String name, float[] values, Color colour, float... dashes) {
        if (values.length == 0) {
            return;
        }
        List<Double> levels = new ArrayList<>();
        for (float value : values) {
            levels.add(Float.isNaN(value) ? null : (double) value);
        }
        line(chart.addSeries(name, years, levels), colour, 2, dashes);
    }

    private static void line(XYSeries series, Color colour, float width, float... dashes) {
        series.setMarker(SeriesMarkers.NONE);
        series.setLineColor(colour);
        series.setLineStyle(
                dashes.length == 0
                        ? new BasicStroke(width)
                        : new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dashes, 0));
    }

    private boolean isNear(ReferenceLevel reference) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (float[] values : List.of(hydrograph.aquiferHead(), hydrograph.waterLevel())) {
            for (float value : values) {
                low = Math.min(low, Float.isNaN(value) ? low : value);
                high = Math.max(high, Float.isNaN(value) ? high : value);
            }
        }
        double room = Math.max(2, ROOM * (high - low));
        return reference.level() > low - room && reference.level() < high + room;
    }

    private static void addReference(XYChart chart, List<Double> years, ReferenceLevel reference) {
        Color colour = switch (reference.kind()) {
            case GROUND -> new Color(0x8a6d46);
            case OUTLET -> new Color(0x23603a);
            case AQUIFER_TOP -> Lettering.INK;
            case PUMP_INTAKE, LOWEST_LEVEL -> new Color(0x7a5600);
            case LIMIT -> new Color(0xa3341c);
        };
        List<Double> ends = List.of(years.get(0), years.get(years.size() - 1));
        String name = Lettering.printable(reference.label(), 40);
        if (chart.getSeries(name) == null) {
            List<Double> levels = List.of(reference.level(), reference.level());
            line(chart.addSeries(name, ends, levels), colour, 1.5f, dashes(reference.kind()));
        }
    }

    /** Lengths of strokes and gaps (px), different for each kind; none for a full line. */
    private static float[] dashes(ReferenceLevel.Kind kind) {
        return switch (kind) {
            case GROUND -> new float[0];
            case OUTLET -> new float[] {6, 4};
            case AQUIFER_TOP -> new float[] {9, 4};
            case PUMP_INTAKE -> new float[] {12, 4};
            case LOWEST_LEVEL -> new float[] {15, 4};
            case LIMIT -> new float[] {18, 4};
        };
    }

    private void addMeasured(XYChart chart) {
        if (hydrograph.measured().isEmpty()) {
            return;
        }
        XYSeries measured = chart.addSeries(
                "Measured",
                hydrograph.measured().stream().map(one -> year(one.day())).toList(),
                hydrograph.measured().stream()
                        .map(Hydrograph.Measurement::level)
                        .toList());
        measured.setLineStyle(new BasicStroke(0));
        measured.setLineColor(new Color(0, 0, 0, 0));
        measured.setMarker(SeriesMarkers.CIRCLE);
        measured.setMarkerColor(Lettering.INK);
    }
}
