package org.headfall.solver.analytic;

import java.util.Collection;

/** Drawdown in a plan of the aquifer that answers linearly to the rates of its bores. Implementations are immutable. */
public interface DrawdownField {

    /**
     * Drawdown that one bore causes at a point.
     *
     * @param bore the bore and its rates
     * @param x easting of the point (m)
     * @param y northing of the point (m)
     * @param time days on the clock of the bore's rates
     * @return drawdown (m), zero before the bore begins
     * @throws IllegalArgumentException if the point or the bore lies outside the aquifer, or the two coincide
     */
    double drawdown(PumpedBore bore, double x, double y, double time);

    /**
     * Drawdown that several bores cause together at a point.
     *
     * @param bores the bores and their rates
     * @param x easting of the point (m)
     * @param y northing of the point (m)
     * @param time days on the clock of the bores' rates
     * @return drawdown (m)
     * @throws IllegalArgumentException as for a single bore
     */
    default double drawdown(Collection<PumpedBore> bores, double x, double y, double time) {
        double sum = 0;
        for (PumpedBore bore : bores) {
            sum += drawdown(bore, x, y, time);
        }
        return sum;
    }
}
