package org.headfall.scenarios.report.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.headfall.scenarios.report.content.FieldMap;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.SectionLine;
import org.headfall.scenarios.report.content.Site;

/** The first section of a report: ground, sealing bed, aquifer, heads at the start and at the end, and bores. */
final class SectionPicture implements Picture {

    private static final int WIDTH = 960;
    private static final int LEFT = 64;
    private static final int RIGHT = 944;
    private static final int[] CLOSE = {70, 330};
    private static final int[] WHOLE = {366, 600};
    private static final int HEIGHT = 690;
    private static final int SAMPLES = 400;
    private static final int TICKS = 6;
    private static final double MOST_ASIDE = 2000;

    /** Distance between the lines of a hatch (px). */
    private static final double HATCH = 7;

    /** Distances from a bore at which its cone is drawn, as parts of its reach. */
    private static final double[] CONE_STEPS = {0, 0.0005, 0.002, 0.01, 0.04, 0.12, 0.3, 0.6};

    private static final Color GROUND = new Color(0x8a6d46);
    private static final Color BED = new Color(0xb8ab98);
    private static final Color ROCK = new Color(0xe3cf9f);
    private static final Color START = new Color(0x4b4b8f);
    private static final Color END = new Color(0x1f6f9c);
    private static final Stroke START_STROKE = Lettering.dashed(2.4, 8, 5);
    private static final Stroke END_STROKE = Lettering.solid(2.4);

    private final ReportContent content;
    private final SectionLine line;
    private final double length;
    private final BoreCones cones;
    private final List<Sample> samples;

    /** Levels at a place along the line (m above datum). */
    private record Sample(double along, double ground, double top, double bottom, double start, double end) {}

    /** A drawing between two heights of the picture and two levels. */
    private record Panel(int upper, int lower, double low, double high) {

        double pixelY(double level) {
            return upper + (high - level) / (high - low) * (lower - upper);
        }
    }

    SectionPicture(ReportContent content) {
        this.content = content;
        line = content.sections().get(0);
        length = Math.hypot(line.toX() - line.fromX(), line.toY() - line.fromY());
        cones = new BoreCones(content);
        samples = DoubleStream.concat(
                        IntStream.range(0, SAMPLES).mapToDouble(i -> (double) i / (SAMPLES - 1)), closeToBores())
                .filter(share -> share >= 0 && share <= 1)
                .sorted()
                .distinct()
                .mapToObj(this::sample)
                .toList();
    }

    /** Places along the line, as shares of it, where cones of bores are drawn more closely. */
    private DoubleStream closeToBores() {
        double ux = (line.toX() - line.fromX()) / length;
        double uy = (line.toY() - line.fromY()) / length;
        return cones.cones().stream().flatMapToDouble(cone -> {
            double along = (cone.x() - line.fromX()) * ux + (cone.y() - line.fromY()) * uy;
            return DoubleStream.of(CONE_STEPS)
                    .flatMap(step -> DoubleStream.of(along - step * cone.reach(), along + step * cone.reach()))
                    .map(distance -> distance / length);
        });
    }

    private Sample sample(double share) {
        FieldMap map = content.map();
        double x = line.fromX() + share * (line.toX() - line.fromX());
        double y = line.fromY() + share * (line.toY() - line.fromY());
        ToDoubleFunction<float[]> at = values -> FieldView.between(map, values, x, y);
        return new Sample(
                share * length,
                at.applyAsDouble(map.ground()),
                at.applyAsDouble(map.aquiferTop()),
                at.applyAsDouble(map.aquiferBottom()),
                cones.start(x, y, at.applyAsDouble(map.heads().get(0).values())),
                cones.end(
                        x,
                        y,
                        at.applyAsDouble(map.heads().get(map.heads().size() - 1).values())));
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
        Panel close = panel(CLOSE, List.of(Sample::ground, Sample::start, Sample::end));
        Panel whole = panel(WHOLE, List.of(Sample::ground, Sample::start, Sample::end, Sample::top, Sample::bottom));
        Lettering.title(graphics, "Section " + line.name(), 8, 22);
        Lettering.note(
                graphics,
                String.format(
                        Locale.ROOT,
                        "Heights are drawn %.1f times larger than lengths above and %.1f times below",
                        exaggeration(close),
                        exaggeration(whole)),
                8,
                40);
        for (Panel panel : List.of(close, whole)) {
            drawPanel(graphics, panel);
        }
        drawNames(graphics);
        drawLegend(graphics);
    }

    private Panel panel(int[] edges, List<ToDoubleFunction<Sample>> levels) {
        double[] all = levels.stream()
                .flatMapToDouble(level -> samples.stream().mapToDouble(level))
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        double low = all.length == 0 ? 0 : all[0];
        double high = all.length == 0 ? 1 : all[all.length - 1];
        double rim = Math.max(0.5, 0.06 * (high - low));
        return new Panel(edges[0], edges[1], low - rim, high + rim);
    }

    private double exaggeration(Panel panel) {
        return (panel.lower() - panel.upper()) / (panel.high() - panel.low()) / ((RIGHT - LEFT) / length);
    }

    private double pixelX(double along) {
        return LEFT + along / length * (RIGHT - LEFT);
    }

    private void drawPanel(Graphics2D graphics, Panel panel) {
        Shape whole = graphics.getClip();
        graphics.clip(new Rectangle2D.Double(LEFT, panel.upper(), RIGHT - LEFT, panel.lower() - panel.upper()));
        fill(graphics, panel, Sample::ground, Sample::top, BED);
        fill(graphics, panel, Sample::top, Sample::bottom, ROCK);
        hatchWhereWaterRises(graphics, panel);
        trace(graphics, panel, Sample::ground, GROUND, Lettering.solid(3));
        trace(graphics, panel, Sample::top, Lettering.INK, Lettering.solid(1));
        trace(graphics, panel, Sample::bottom, Lettering.INK, Lettering.solid(1));
        near().forEach(site -> drawBore(graphics, panel, site));
        trace(graphics, panel, Sample::start, START, START_STROKE);
        trace(graphics, panel, Sample::end, END, END_STROKE);
        graphics.setClip(whole);
        drawAxes(graphics, panel);
    }

    private void fill(
            Graphics2D graphics,
            Panel panel,
            ToDoubleFunction<Sample> upper,
            ToDoubleFunction<Sample> lower,
            Color colour) {
        List<Sample> known = samples.stream()
                .filter(sample -> Double.isFinite(upper.applyAsDouble(sample) + lower.applyAsDouble(sample)))
                .toList();
        if (known.isEmpty()) {
            return;
        }
        Path2D path = new Path2D.Double();
        path.moveTo(pixelX(known.get(0).along()), panel.pixelY(upper.applyAsDouble(known.get(0))));
        known.forEach(sample -> path.lineTo(pixelX(sample.along()), panel.pixelY(upper.applyAsDouble(sample))));
        for (int i = known.size() - 1; i >= 0; i--) {
            Sample sample = known.get(i);
            path.lineTo(pixelX(sample.along()), panel.pixelY(lower.applyAsDouble(sample)));
        }
        path.closePath();
        graphics.setColor(colour);
        graphics.fill(path);
    }

    /** Between ground and head at the end, where that stands above ground. */
    private void hatchWhereWaterRises(Graphics2D graphics, Panel panel) {
        graphics.setColor(END);
        graphics.setStroke(Lettering.solid(0.8));
        for (double x = LEFT; x < RIGHT; x += HATCH) {
            Sample sample = sample((x - LEFT) / (RIGHT - LEFT));
            if (sample.end() > sample.ground()) {
                graphics.draw(new Line2D.Double(x, panel.pixelY(sample.end()), x, panel.pixelY(sample.ground())));
            }
        }
    }

    private void trace(Graphics2D graphics, Panel panel, ToDoubleFunction<Sample> level, Color colour, Stroke stroke) {
        Path2D path = new Path2D.Double();
        boolean drawing = false;
        for (Sample sample : samples) {
            double y = panel.pixelY(level.applyAsDouble(sample));
            if (!Double.isFinite(y)) {
                drawing = false;
                continue;
            }
            if (drawing) {
                path.lineTo(pixelX(sample.along()), y);
            } else {
                path.moveTo(pixelX(sample.along()), y);
            }
            drawing = true;
        }
        graphics.setColor(colour);
        graphics.setStroke(stroke);
        graphics.draw(path);
    }

    private record Near(Site site, double along) {}

    /** Bores close to the line, in order along it. */
    private List<Near> near() {
        double ux = (line.toX() - line.fromX()) / length;
        double uy = (line.toY() - line.fromY()) / length;
        List<Near> near = new ArrayList<>();
        for (Site site : content.sites()) {
            double dx = site.x() - line.fromX();
            double dy = site.y() - line.fromY();
            double along = dx * ux + dy * uy;
            boolean close = Math.abs(dx * uy - dy * ux) <= Math.min(length / 20, MOST_ASIDE);
            if (close && along >= 0 && along <= length && Double.isFinite(site.aquiferTop())) {
                near.add(new Near(site, along));
            }
        }
        near.sort(Comparator.comparingDouble(Near::along));
        return near;
    }

    private void drawBore(Graphics2D graphics, Panel panel, Near near) {
        double x = pixelX(near.along());
        Site site = near.site();
        graphics.setColor(Lettering.INK);
        graphics.setStroke(Lettering.solid(1.6));
        graphics.draw(new Line2D.Double(x, panel.pixelY(site.ground()), x, panel.pixelY(site.aquiferTop())));
        double bottom = FieldView.between(content.map(), content.map().aquiferBottom(), site.x(), site.y());
        if (Double.isFinite(bottom)) {
            graphics.setStroke(
                    new BasicStroke(4, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {2, 2}, 0));
            graphics.draw(new Line2D.Double(x, panel.pixelY(site.aquiferTop()), x, panel.pixelY(bottom)));
        }
        if (Double.isFinite(site.intake())) {
            graphics.fill(new Rectangle2D.Double(x - 4, panel.pixelY(site.intake()) - 4, 8, 8));
        }
    }

    private void drawNames(Graphics2D graphics) {
        double end = 0;
        for (Near near : near()) {
            String name = Lettering.printable(near.site().name(), 28);
            double x = pixelX(near.along()) - 4;
            if (x > end + 8) {
                Lettering.label(graphics, name, x, CLOSE[0] - 8);
                end = x + Lettering.width(graphics, name);
            }
        }
    }

    private void drawAxes(Graphics2D graphics, Panel panel) {
        graphics.setColor(Lettering.QUIET);
        graphics.setStroke(Lettering.solid(0.8));
        graphics.draw(new Rectangle2D.Double(LEFT, panel.upper(), RIGHT - LEFT, panel.lower() - panel.upper()));
        double step = step((panel.high() - panel.low()) / TICKS);
        for (double level = Math.ceil(panel.low() / step) * step; level <= panel.high(); level += step) {
            double y = panel.pixelY(level);
            graphics.draw(new Line2D.Double(LEFT - 4, y, LEFT, y));
            Lettering.note(graphics, String.format(Locale.ROOT, "%.0f m", level), 8, (int) y + 4);
        }
        double kilometres = step(length / 1000 / TICKS);
        for (double along = 0; along <= length / 1000; along += kilometres) {
            double x = pixelX(along * 1000);
            graphics.draw(new Line2D.Double(x, panel.lower(), x, panel.lower() + 4));
            Lettering.note(graphics, String.format(Locale.ROOT, "%.3g km", along), (int) x - 12, panel.lower() + 18);
        }
    }

    /** The next larger of 1, 2, 5 times a power of ten, at least 1. */
    private static double step(double size) {
        double power = Math.max(1, Math.pow(10, Math.floor(Math.log10(Math.max(size, 1e-9)))));
        return power >= size ? power : 2 * power >= size ? 2 * power : 5 * power >= size ? 5 * power : 10 * power;
    }

    private void drawLegend(Graphics2D graphics) {
        FieldMap map = content.map();
        int y = 650;
        swatch(graphics, BED, 10, y, "sealing bed and above");
        swatch(graphics, ROCK, 190, y, "aquifer");
        stroke(graphics, GROUND, Lettering.solid(3), 280, y, "ground");
        stroke(
                graphics,
                START,
                START_STROKE,
                370,
                y,
                "head on " + map.heads().get(0).date());
        stroke(
                graphics,
                END,
                END_STROKE,
                550,
                y,
                "head on " + map.heads().get(map.heads().size() - 1).date());
        Lettering.note(
                graphics,
                "Upright hatching: water rises above ground. Squares: pumps. Screens are drawn through the whole aquifer.",
                10,
                y + 26);
    }

    private static void swatch(Graphics2D graphics, Color colour, int x, int y, String words) {
        graphics.setColor(colour);
        graphics.fillRect(x, y - 11, 26, 14);
        Lettering.note(graphics, words, x + 32, y);
    }

    private static void stroke(Graphics2D graphics, Color colour, Stroke stroke, int x, int y, String words) {
        graphics.setColor(colour);
        graphics.setStroke(stroke);
        graphics.draw(new Line2D.Double(x, y - 4, x + 30, y - 4));
        Lettering.note(graphics, words, x + 36, y);
    }
}
