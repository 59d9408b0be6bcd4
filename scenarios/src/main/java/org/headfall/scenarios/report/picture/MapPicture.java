package org.headfall.scenarios.report.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.report.content.FieldMap;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.Site;
import org.headfall.scenarios.report.content.SiteKind;

/** The map of drawdown at the last date: classes of colour, labelled contours, sites, north and a scale bar. */
final class MapPicture implements Picture {

    private static final int WIDTH = 960;
    private static final int HEIGHT = 620;
    private static final int TOP = 50;
    private static final int LEGEND = 90;

    /** Side of the blocks that colours are drawn in (px). */
    private static final int BLOCK = 3;

    /** Distance between labels of contours (px). */
    private static final double APART = 60;

    private final ReportContent content;
    private final FieldMap map;
    private final FieldView view;
    private final float[] drawdown;
    private final ColourClasses classes;

    MapPicture(ReportContent content) {
        this.content = content;
        map = content.map();
        view = FieldView.about(content, WIDTH, HEIGHT);
        drawdown = drawdown();
        double low = 0;
        double high = 0;
        for (float value : drawdown) {
            low = Math.min(low, Float.isNaN(value) ? low : value);
            high = Math.max(high, Float.isNaN(value) ? high : value);
        }
        classes = ColourClasses.ofDrawdown(low, high);
    }

    private float[] drawdown() {
        int last = map.heads().size() - 1;
        if (!map.drawdowns().isEmpty()) {
            return map.drawdowns().get(last).values();
        }
        float[] start = map.heads().get(0).values();
        float[] end = map.heads().get(last).values();
        float[] fall = new float[start.length];
        for (int cell = 0; cell < fall.length; cell++) {
            fall[cell] = start[cell] - end[cell];
        }
        return fall;
    }

    @Override
    public int width() {
        return WIDTH;
    }

    @Override
    public int height() {
        return TOP + HEIGHT + LEGEND;
    }

    @Override
    public void draw(Graphics2D graphics) {
        Lettering.title(graphics, content.heading().title(), 8, 22);
        Lettering.note(
                graphics,
                "Drawdown (m) on " + map.heads().get(map.heads().size() - 1).date() + ", counted "
                        + map.drawdownMeaning(),
                8,
                40);
        Shape whole = graphics.getClip();
        graphics.translate(0, TOP);
        graphics.clip(new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
        paintClasses(graphics);
        drawContours(graphics);
        content.sites().forEach(site -> drawSite(graphics, site));
        drawScaleAndNorth(graphics);
        graphics.setClip(null);
        graphics.translate(0, -TOP);
        graphics.setClip(whole);
        drawLegend(graphics);
    }

    /** Blocks of one colour beside each other are joined, which keeps the file small. */
    private void paintClasses(Graphics2D graphics) {
        for (int top = 0; top < HEIGHT; top += BLOCK) {
            int start = 0;
            int former = -1;
            for (int left = 0; left <= WIDTH; left += BLOCK) {
                int now = left == WIDTH ? -1 : classAt(left + BLOCK / 2.0, top + BLOCK / 2.0);
                if (now != former || left == WIDTH) {
                    if (former >= 0) {
                        graphics.setColor(classes.colours().get(former));
                        graphics.fillRect(start, top, left - start, BLOCK);
                    }
                    start = left;
                    former = now;
                }
            }
        }
    }

    private int classAt(double px, double py) {
        double x = view.west() + px * view.metresPerPixel();
        double y = view.north() - py * view.metresPerPixel();
        double value = FieldView.between(map, drawdown, x, y);
        return Double.isNaN(value) ? -1 : classes.classOf(value);
    }

    private void drawContours(Graphics2D graphics) {
        ContourLines lines = new ContourLines(map.x(), map.y(), drawdown);
        List<double[]> taken = new ArrayList<>();
        graphics.setStroke(Lettering.solid(1));
        for (double limit : classes.limits()) {
            Path2D path = new Path2D.Double();
            double[] label = null;
            for (ContourLines.Piece piece : lines.at(limit)) {
                double x = view.pixelX(piece.fromX());
                double y = view.pixelY(piece.fromY());
                path.moveTo(x, y);
                path.lineTo(view.pixelX(piece.toX()), view.pixelY(piece.toY()));
                label = label == null && isFree(taken, x, y) ? new double[] {x, y} : label;
            }
            graphics.setColor(new Color(20, 24, 26, 190));
            graphics.draw(path);
            if (label != null) {
                taken.add(label);
                Lettering.label(graphics, number(limit), label[0] - 6, label[1] + 4);
            }
        }
    }

    private static boolean isFree(List<double[]> taken, double x, double y) {
        return x > 30
                && y > 20
                && x < WIDTH - 30
                && y < HEIGHT - 40
                && taken.stream().allMatch(other -> Math.hypot(other[0] - x, other[1] - y) > APART);
    }

    private void drawSite(Graphics2D graphics, Site site) {
        double x = view.pixelX(site.x());
        double y = view.pixelY(site.y());
        if (x < 0 || y < 0 || x > WIDTH || y > HEIGHT) {
            return;
        }
        graphics.setColor(Color.WHITE);
        graphics.fill(new Ellipse2D.Double(x - 7, y - 7, 14, 14));
        graphics.setColor(Lettering.INK);
        graphics.setStroke(Lettering.solid(2));
        Shape shape = symbol(site.kind(), x, y);
        if (site.kind() == SiteKind.PUMPED_BORE) {
            graphics.fill(shape);
        } else {
            graphics.draw(shape);
        }
        Lettering.label(graphics, site.name(), x + 10, y + 4);
    }

    private static Shape symbol(SiteKind kind, double x, double y) {
        double r = 5;
        Path2D path = new Path2D.Double();
        switch (kind) {
            case PUMPED_BORE -> path.append(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r), false);
            case IDLE_BORE -> path.append(new Rectangle2D.Double(x - r + 1, y - r + 1, 2 * r - 2, 2 * r - 2), false);
            case FREE_FLOWING_BORE -> polygon(path, x - r, y + r, x, y - r, x + r, y + r);
            case SPRING, PROTECTED_POINT -> polygon(path, x, y - r, x + r, y, x, y + r, x - r, y);
        }
        return path;
    }

    private static void polygon(Path2D path, double... places) {
        path.moveTo(places[0], places[1]);
        for (int i = 2; i < places.length; i += 2) {
            path.lineTo(places[i], places[i + 1]);
        }
        path.closePath();
    }

    private void drawScaleAndNorth(Graphics2D graphics) {
        double target = 160 * view.metresPerPixel();
        double power = Math.pow(10, Math.floor(Math.log10(target)));
        double length = 5 * power <= target ? 5 * power : 2 * power <= target ? 2 * power : power;
        double wide = length / view.metresPerPixel();
        graphics.setColor(Color.WHITE);
        graphics.fill(new Rectangle2D.Double(10, HEIGHT - 34, wide + 12, 28));
        graphics.setColor(Lettering.INK);
        graphics.setStroke(Lettering.solid(2));
        graphics.draw(new Line2D.Double(16, HEIGHT - 12, 16 + wide, HEIGHT - 12));
        Lettering.label(
                graphics, length >= 1000 ? number(length / 1000) + " km" : number(length) + " m", 18, HEIGHT - 18);
        graphics.draw(new Line2D.Double(WIDTH - 20, 34, WIDTH - 20, 12));
        graphics.draw(new Line2D.Double(WIDTH - 25, 20, WIDTH - 20, 12));
        graphics.draw(new Line2D.Double(WIDTH - 15, 20, WIDTH - 20, 12));
        Lettering.label(graphics, "N", WIDTH - 24, 48);
    }

    private void drawLegend(Graphics2D graphics) {
        int count = classes.colours().size();
        double wide = Math.min(56, (WIDTH - 40.0) / count);
        int top = TOP + HEIGHT + 14;
        for (int i = 0; i < count; i++) {
            Shape swatch = new Rectangle2D.Double(10 + i * wide, top, wide, 16);
            graphics.setColor(classes.colours().get(i));
            graphics.fill(swatch);
            graphics.setColor(Lettering.QUIET);
            graphics.setStroke(Lettering.solid(0.6));
            graphics.draw(swatch);
            if (i > 0) {
                Lettering.note(graphics, number(classes.limits().get(i - 1)), (int) (4 + i * wide), top + 32);
            }
        }
        Lettering.note(
                graphics,
                "Disc: pumped bore. Triangle: free-flowing bore. Square: idle bore. Diamond: spring or watched point."
                        + " Figures of a model, no approval.",
                10,
                top + 54);
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.3f", value)
                .replaceAll("\\.?0+$", "")
                .replace('-', '\u2212');
    }
}
