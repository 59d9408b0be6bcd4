package org.headfall.validation.simulator;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.headfall.solver.grid.Axis;

/**
 * Axes with equal cells where things happen and cells that grow steadily from there to a far rim.
 *
 * @param cell width of the equal cells (m)
 * @param growth ratio of neighbouring widths beyond them, above 1
 * @param reach distance of the rim from the origin (m)
 */
record Spacing(double cell, double growth, double reach) {

    /** Axis on both sides of the origin, which is an edge; a number of equal cells on either side of it. */
    Axis bothWays(int equalCells) {
        List<Double> positive = outward(equalCells);
        List<Double> edges = new ArrayList<>();
        positive.forEach(edge -> edges.add(-edge));
        Collections.reverse(edges);
        edges.addAll(positive.subList(1, positive.size()));
        return axis(edges);
    }

    /** Axis from a side at the origin inward. */
    Axis fromSide(int equalCells) {
        return axis(outward(equalCells));
    }

    private List<Double> outward(int equalCells) {
        List<Double> edges = new ArrayList<>();
        for (int i = 0; i <= equalCells; i++) {
            edges.add(i * cell);
        }
        double width = cell;
        double edge = equalCells * cell;
        while (edge < reach) {
            width *= growth;
            edge += width;
            edges.add(edge);
        }
        return edges;
    }

    private static Axis axis(List<Double> edges) {
        return Axis.ofEdges(edges.stream().mapToDouble(Double::doubleValue).toArray());
    }
}
