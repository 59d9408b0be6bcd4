package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.solver.allocation.Programme;

/**
 * Evens out what each bore takes over time where that costs nothing: of schedules that are as good as each other a linear
 * programme finds a corner, with seasons as uneven as can be. Of those in which each bore takes as much as in it, that of the
 * least squares of rates is found, weighted by how long they last.
 */
final class EvenSchedules {

    /** Fall of the squares, as a share of them, for which rates are left as they are. */
    private static final double NO_DIFFERENCE = 1e-4;

    /** Share of what a bore takes that rounding may lose. */
    private static final double ROUNDING = 1e-7;

    private final SharedWater water;
    private final RateVariables variables;

    EvenSchedules(SharedWater water, RateVariables variables) {
        this.water = water;
        this.variables = variables;
    }

    /**
     * Evens out.
     *
     * @param name of what was wanted of the rates, of which only the mean taking of each bore counts
     * @param goal what was wanted
     * @param wishes wishes that are kept besides
     * @param best the best rates (m³/d)
     * @return rates that are as good, the best rates themselves where no more even ones are found
     */
    double[] of(String name, Programme goal, List<Wish> wishes, double[] best) {
        double[][] curvature = new double[best.length][best.length];
        List<Wish> kept = new ArrayList<>(wishes);
        for (int bore = 0; bore < variables.bores(); bore++) {
            double[] less = new double[best.length];
            double taken = 0;
            for (int group = 0; group < variables.blocks().groups(); group++) {
                int v = variables.variable(bore, group);
                double days = variables.blocks().days(group);
                curvature[v][v] = days;
                less[v] = -days;
                taken += days * best[v];
            }
            kept.add(Wish.of("what bore " + bore + " takes", less, -taken * (1 - ROUNDING), "m3", 1));
        }
        Programme squares = new Programme(goal.most(), new double[best.length], curvature);
        return water.solveLike(name, squares, kept)
                .map(SharedWater.Best::rates)
                .filter(even -> squares.valueOf(even) < (1 - NO_DIFFERENCE) * squares.valueOf(best))
                .orElse(Arrays.copyOf(best, best.length));
    }
}
