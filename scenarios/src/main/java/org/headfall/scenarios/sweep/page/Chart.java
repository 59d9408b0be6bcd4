package org.headfall.scenarios.sweep.page;

import java.util.List;

/**
 * A drawn chart: shapes in a picture of {@link #WIDTH} x {@link #HEIGHT}, with the words around it.
 *
 * @param title what it shows
 * @param across name of the axis across, with unit
 * @param up name of the axis upwards, with unit
 * @param lines lines and bands, as paths of SVG with their class
 * @param dots points
 * @param labels texts in the picture
 */
public record Chart(String title, String across, String up, List<Line> lines, List<Dot> dots, List<Label> labels) {

    /** Width of the picture. */
    public static final int WIDTH = 480;
    /** Height of the picture. */
    public static final int HEIGHT = 320;

    /** Copies the lists. */
    public Chart {
        lines = List.copyOf(lines);
        dots = List.copyOf(dots);
        labels = List.copyOf(labels);
    }

    /**
     * Charts that belong together.
     *
     * @param title what they show
     * @param note how to read them, and how many runs they rest on
     * @param charts one large, or several small ones on the same scales
     */
    public record Group(String title, String note, List<Chart> charts) {
        /** Copies the list. */
        public Group {
            charts = List.copyOf(charts);
        }
    }

    /**
     * A path.
     *
     * @param style its class, such as "axis", "grid", "band", "middle", "low" or "high"
     * @param path its SVG path data
     */
    public record Line(String style, String path) {}

    /**
     * A point.
     *
     * @param style its class: "run" or "best"
     * @param x place across
     * @param y place down
     * @param title what it says when it is pointed at
     */
    public record Dot(String style, String x, String y, String title) {}

    /**
     * A text.
     *
     * @param anchor "start", "middle" or "end"
     * @param x place across
     * @param y place down
     * @param text the text
     */
    public record Label(String anchor, String x, String y, String text) {}
}
