package org.headfall.solver.analytic;

import org.headfall.solver.analytic.function.Argument;
import org.headfall.solver.schedule.StepSchedule;

/**
 * A fully penetrating bore as the closed-form solutions see it: a place and a rate that changes in steps.
 *
 * @param x easting of the bore (m)
 * @param y northing of the bore (m)
 * @param rates rate taken out (m³/d), zero before the first step
 */
public record PumpedBore(double x, double y, StepSchedule rates) {

    /** Checks the place. */
    public PumpedBore {
        Argument.finite("x of the bore", x);
        Argument.finite("y of the bore", y);
    }

    /**
     * Bore pumped at one rate from time zero on.
     *
     * @param x easting of the bore (m)
     * @param y northing of the bore (m)
     * @param rate rate taken out (m³/d)
     */
    public PumpedBore(double x, double y, double rate) {
        this(x, y, new StepSchedule(new double[] {0}, new double[] {rate}));
    }
}
