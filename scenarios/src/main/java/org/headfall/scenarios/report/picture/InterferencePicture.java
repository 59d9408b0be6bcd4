package org.headfall.scenarios.report.picture;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.report.content.Interference;
import org.headfall.scenarios.report.content.ReportContent;

/** The last table of interference as a heat map with numbers. */
final class InterferencePicture implements Picture {

    private static final int CELL_WIDTH = 46;
    private static final int CELL_HEIGHT = 24;
    private static final int NAMES = 190;
    private static final int TOP = 190;

    /** Room to the right for the last of the slanting names. */
    private static final int SLANT = 110;

    private final Interference table;

    InterferencePicture(ReportContent content) {
        List<Interference> tables = content.interference();
        table = tables.get(tables.size() - 1);
    }

    @Override
    public int width() {
        return NAMES + table.causes().size() * CELL_WIDTH + SLANT;
    }

    @Override
    public int height() {
        return TOP + table.rows().size() * CELL_HEIGHT + 20;
    }

    @Override
    public void draw(Graphics2D graphics) {
        Lettering.title(graphics, "Drawdown since the start by cause (m), on " + table.date(), 8, 22);
        Lettering.note(graphics, "Rows: where. Columns: due to what.", 8, 40);
        double most = table.rows().stream()
                .flatMap(row -> row.drawdowns().stream())
                .mapToDouble(Math::abs)
                .filter(Double::isFinite)
                .max()
                .orElse(1);
        for (int column = 0; column < table.causes().size(); column++) {
            drawCause(graphics, table.causes().get(column), NAMES + column * CELL_WIDTH + CELL_WIDTH / 2 + 4);
        }
        for (int row = 0; row < table.rows().size(); row++) {
            Interference.Row line = table.rows().get(row);
            int top = TOP + row * CELL_HEIGHT;
            Lettering.label(graphics, line.site(), 8, top + 16);
            for (int column = 0; column < line.drawdowns().size(); column++) {
                drawCell(graphics, line.drawdowns().get(column), most, NAMES + column * CELL_WIDTH, top);
            }
        }
    }

    private static void drawCause(Graphics2D graphics, String name, int x) {
        AffineTransform upright = graphics.getTransform();
        graphics.translate(x, TOP - 8);
        graphics.rotate(-Math.PI / 3);
        Lettering.label(graphics, name, 0, 0);
        graphics.setTransform(upright);
    }

    private static void drawCell(Graphics2D graphics, double value, double most, int left, int top) {
        Color shade = ColourClasses.shade(value / Math.max(most, 1e-9));
        graphics.setColor(shade);
        graphics.fillRect(left, top, CELL_WIDTH, CELL_HEIGHT);
        graphics.setColor(Lettering.LINE);
        graphics.drawRect(left, top, CELL_WIDTH, CELL_HEIGHT);
        graphics.setColor(isDark(shade) ? Color.WHITE : Color.BLACK);
        graphics.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 11));
        String number = String.format(Locale.ROOT, "%.2f", value)
                .replaceAll("^-(?=0\\.00$)", "")
                .replace('-', '\u2212');
        graphics.drawString(
                number, (float) (left + CELL_WIDTH - 5 - Lettering.width(graphics, number)), (float) top + 16);
    }

    /** Whether white letters can be read better than black ones (relative luminance by WCAG 2.2, roughly). */
    private static boolean isDark(Color colour) {
        return 0.2126 * colour.getRed() + 0.7152 * colour.getGreen() + 0.0722 * colour.getBlue() < 117;
    }
}
