package org.headfall.scenarios.siting;

import java.util.List;

/**
 * Places that bend and act on each other: the excess of one raises head at the others, place by place until it settles. Each
 * place for itself is solved for as it bends, so that is the search for the least of a convex function along one axis after
 * another, which settles; slowly where places act on each other about as much as on themselves. Not for several threads.
 */
final class MutualBends {

    private static final int MOST_ROUNDS = 1000;
    private static final double SETTLED = 1e-7;

    private final List<Bend> bends;
    private final double[][] among;
    private double unsettled;

    /**
     * Some places.
     *
     * @param bends how each bends
     * @param among rise of head at each place, the first index, by a unit excess of each other (d/m²)
     */
    MutualBends(List<Bend> bends, double[][] among) {
        this.bends = List.copyOf(bends);
        this.among = among;
    }

    /**
     * What each place loses more than by its straight rule.
     *
     * @param falls fall of head at each by straight rules (m)
     * @return excess of each (m³/d)
     */
    double[] excesses(double[] falls) {
        double[] excess = new double[falls.length];
        double moved = Double.POSITIVE_INFINITY;
        for (int round = 0; round < MOST_ROUNDS && moved > SETTLED; round++) {
            moved = round(falls, excess);
        }
        if (moved > SETTLED) {
            unsettled = Math.max(unsettled, moved);
        }
        return excess;
    }

    /** Sets the excess of one place after the other, and gives the share of the largest by which one has moved. */
    private double round(double[] falls, double[] excess) {
        double largest = 0;
        double moved = 0;
        for (int i = 0; i < excess.length; i++) {
            double fall = falls[i];
            for (int j = 0; j < excess.length; j++) {
                fall -= among[i][j] * excess[j];
            }
            double next = bends.get(i).excess(fall);
            moved = Math.max(moved, Math.abs(next - excess[i]));
            largest = Math.max(largest, Math.abs(next));
            excess[i] = next;
        }
        return moved == 0 ? 0 : moved / largest;
    }

    /**
     * Largest share of the largest excess by which one still moved when rounds ended (-), of all that was asked so far; 0 where
     * all have settled.
     */
    double unsettled() {
        return unsettled;
    }
}
