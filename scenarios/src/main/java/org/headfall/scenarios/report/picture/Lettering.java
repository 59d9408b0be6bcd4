package org.headfall.scenarios.report.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Stroke;

/** Text and lines of all pictures: one face, three sizes, names cut short. */
final class Lettering {

    static final Color INK = new Color(0x22282b);
    static final Color QUIET = new Color(0x555f63);
    static final Color LINE = new Color(0xcfcabd);

    private static final int LONGEST = 28;

    private Lettering() {}

    static void title(Graphics2D graphics, String text, int x, int y) {
        graphics.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 16));
        graphics.setColor(INK);
        graphics.drawString(printable(text, 2 * LONGEST), x, y);
    }

    static void note(Graphics2D graphics, String text, int x, int y) {
        graphics.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 12));
        graphics.setColor(QUIET);
        graphics.drawString(text, x, y);
    }

    /** A label with a light rim, so that it can be read on any colour. */
    static void label(Graphics2D graphics, String text, double x, double y) {
        graphics.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 11));
        String shown = printable(text, LONGEST);
        graphics.setColor(Color.WHITE);
        for (int[] shift : new int[][] {{-1, 0}, {1, 0}, {0, -1}, {0, 1}}) {
            graphics.drawString(shown, (float) x + shift[0], (float) y + shift[1]);
        }
        graphics.setColor(INK);
        graphics.drawString(shown, (float) x, (float) y);
    }

    static double width(Graphics2D graphics, String text) {
        return graphics.getFontMetrics().getStringBounds(text, graphics).getWidth();
    }

    /** A name without control characters and what XML cannot hold, cut short. */
    static String printable(String name, int longest) {
        String plain = name.replaceAll("[\\p{Cc}\\p{Cf}\\p{Cs}\\p{Cn}]", "?");
        return plain.length() > longest ? plain.substring(0, longest - 1) + "\u2026" : plain;
    }

    static Stroke solid(double width) {
        return new BasicStroke((float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
    }

    static Stroke dashed(double width, float... dashes) {
        return new BasicStroke((float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dashes, 0);
    }
}
