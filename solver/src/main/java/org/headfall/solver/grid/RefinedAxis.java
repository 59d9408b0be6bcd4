package org.headfall.solver.grid;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.solver.wording.PlainNumber;

/**
 * Builds an axis with fine cells at chosen points and cells that widen away from them by a constant ratio up to a
 * coarse width. Each point of its own falls on a cell centre where its neighbours leave room.
 *
 * @param coarse width of cells far from every point (m), positive
 * @param fine width of cells at the points (m), positive, at most {@code coarse}
 * @param growth largest ratio of the widths of neighbouring cells, above 1
 */
public record RefinedAxis(double coarse, double fine, double growth) {

    /** Checks the widths and the ratio. */
    public RefinedAxis {
        if (!(fine > 0 && fine <= coarse && Double.isFinite(coarse))) {
            throw new IllegalArgumentException("cell widths must satisfy 0 < fine <= coarse, found "
                    + PlainNumber.of(fine) + " m and " + PlainNumber.of(coarse) + " m");
        }
        if (!(growth > 1)) {
            throw new IllegalArgumentException("growth must be above 1, found " + PlainNumber.of(growth));
        }
    }

    /**
     * Axis from start to end, refined around the points.
     *
     * @param start first edge (m)
     * @param end last edge (m), above start
     * @param points positions to refine around (m); those outside are ignored
     * @return axis with edges at start and end
     * @throws IllegalArgumentException if end is not above start
     */
    public Axis between(double start, double end, double... points) {
        if (!(end > start)) {
            throw new IllegalArgumentException(
                    "end must lie above start, found " + PlainNumber.of(start) + " to " + PlainNumber.of(end) + " m");
        }
        List<Double> anchors = anchors(start, end, points);
        List<Double> edges = new ArrayList<>(List.of(anchors.get(0)));
        for (int i = 1; i < anchors.size(); i++) {
            fill(edges, anchors.get(i - 1), anchors.get(i), points);
        }
        return Axis.ofEdges(edges.stream().mapToDouble(Double::doubleValue).toArray());
    }

    /** Start, end, and both edges of a fine cell centred on each point, as far as they do not crowd each other. */
    private List<Double> anchors(double start, double end, double[] points) {
        double[] sorted = points.clone();
        Arrays.sort(sorted);
        List<Double> anchors = new ArrayList<>(List.of(start));
        for (double point : sorted) {
            double west = point - 0.5 * fine;
            double east = point + 0.5 * fine;
            boolean clear = west - anchors.get(anchors.size() - 1) >= 0.5 * fine && end - east >= 0.5 * fine;
            if (clear) {
                anchors.add(west);
                anchors.add(east);
            }
        }
        anchors.add(end);
        return anchors;
    }

    /** Adds edges from one anchor to the next: widths follow the distance to the nearest point, scaled to fit. */
    private void fill(List<Double> edges, double from, double to, double[] points) {
        List<Double> widths = new ArrayList<>();
        double position = from;
        while (position < to) {
            double width = widthAt(position, points);
            width = Math.min(width, widthAt(position + width, points));
            widths.add(width);
            position += width;
        }
        double last = widths.get(widths.size() - 1);
        double overshoot = position - to;
        if (widths.size() > 1 && overshoot > 0.5 * last) {
            widths.remove(widths.size() - 1);
            overshoot -= last;
        }
        double scale = (to - from) / (to - from + overshoot);
        double edge = from;
        for (int i = 0; i < widths.size() - 1; i++) {
            edge += widths.get(i) * scale;
            edges.add(edge);
        }
        edges.add(to);
    }

    /** Width allowed at a position: a geometric sequence from the nearest point has width fine + distance (1 - 1/growth). */
    private double widthAt(double position, double[] points) {
        double width = coarse;
        for (double point : points) {
            double distance = Math.max(0, Math.abs(position - point) - 1.5 * fine);
            width = Math.min(width, fine + distance * (1 - 1 / growth));
        }
        return width;
    }
}
