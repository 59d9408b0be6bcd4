package org.headfall.solver.grid;

import java.util.Arrays;
import org.headfall.solver.wording.PlainNumber;

/**
 * One axis of a rectilinear grid: cell edges in increasing order. Immutable and safe to share between threads.
 */
public final class Axis {

    private final double[] edges;

    private Axis(double[] edges) {
        this.edges = edges;
    }

    /**
     * Axis with the given cell edges.
     *
     * @param edges cell edges (m), at least two, finite and strictly increasing; copied
     * @return the axis, with one cell fewer than edges
     * @throws IllegalArgumentException if there are fewer than two edges or they do not increase
     */
    public static Axis ofEdges(double... edges) {
        if (edges.length < 2) {
            throw new IllegalArgumentException("an axis needs at least 2 edges, found " + edges.length);
        }
        for (int i = 0; i < edges.length; i++) {
            if (!Double.isFinite(edges[i]) || (i > 0 && edges[i] <= edges[i - 1])) {
                throw new IllegalArgumentException(
                        "edges must be finite and increase: edge " + i + " is " + PlainNumber.of(edges[i]) + " m");
            }
        }
        return new Axis(edges.clone());
    }

    /**
     * Axis of equal cells.
     *
     * @param start first edge (m)
     * @param width width of each cell (m), positive
     * @param cells number of cells, at least one
     * @return the axis
     * @throws IllegalArgumentException if the width or the number of cells is not positive
     */
    public static Axis uniform(double start, double width, int cells) {
        if (cells < 1 || !(width > 0)) {
            throw new IllegalArgumentException("need at least one cell of positive width, found " + cells + " cells of "
                    + PlainNumber.of(width) + " m");
        }
        double[] edges = new double[cells + 1];
        for (int i = 0; i <= cells; i++) {
            edges[i] = start + i * width;
        }
        return ofEdges(edges);
    }

    /** Number of cells along the axis. */
    public int cells() {
        return edges.length - 1;
    }

    /** First edge (m). */
    public double start() {
        return edges[0];
    }

    /** Last edge (m). */
    public double end() {
        return edges[edges.length - 1];
    }

    /** Edge before cell {@code i} (m); {@code i == cells()} gives the last edge. */
    public double edge(int i) {
        return edges[i];
    }

    /** Width of cell {@code i} (m). */
    public double width(int i) {
        return edges[i + 1] - edges[i];
    }

    /** Centre of cell {@code i} (m). */
    public double centre(int i) {
        return 0.5 * (edges[i] + edges[i + 1]);
    }

    /** Copy of all edges (m), one more than cells. */
    public double[] edges() {
        return edges.clone();
    }

    /** Copy of all cell centres (m). */
    public double[] centres() {
        double[] centres = new double[cells()];
        Arrays.setAll(centres, this::centre);
        return centres;
    }

    /**
     * Cell that holds a position; a position on an inner edge belongs to the cell after it.
     *
     * @param position position along the axis (m)
     * @return the cell, or -1 outside the axis
     */
    public int locate(double position) {
        if (!(position >= start() && position <= end())) {
            return -1;
        }
        int found = Arrays.binarySearch(edges, position);
        int cell = found >= 0 ? found : -found - 2;
        return Math.min(cell, cells() - 1);
    }

    /** Smallest cell width (m). */
    public double smallestWidth() {
        double smallest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < cells(); i++) {
            smallest = Math.min(smallest, width(i));
        }
        return smallest;
    }

    /** Largest cell width (m). */
    public double largestWidth() {
        double largest = 0;
        for (int i = 0; i < cells(); i++) {
            largest = Math.max(largest, width(i));
        }
        return largest;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Axis axis && Arrays.equals(edges, axis.edges);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(edges);
    }

    @Override
    public String toString() {
        return cells() + " cells of " + smallestWidth() + " to " + largestWidth() + " m from " + start() + " to "
                + end() + " m";
    }
}
