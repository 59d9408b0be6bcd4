package org.headfall.solver.analytic.side;

import static org.headfall.solver.analytic.function.Argument.notNegative;
import static org.headfall.solver.analytic.function.Argument.positive;

import org.headfall.solver.analytic.Superposition;
import org.headfall.solver.analytic.function.ErrorIntegral;
import org.headfall.solver.schedule.StepSchedule;

/**
 * What a sudden change of head along a straight side does to the half-plane beside it:
 * {@code dh erfc(x sqrt(S/(4 T t)))} at distance x.
 *
 * <p>Source: Carslaw and Jaeger (1959), Conduction of heat in solids, section 2.5; for aquifers Ferris (1950).
 *
 * @param transmissivity T (m²/d), positive
 * @param storativity S, positive
 */
public record SteppedSideHead(double transmissivity, double storativity) {

    /** Checks the properties. */
    public SteppedSideHead {
        positive("transmissivity", transmissivity);
        positive("storativity", storativity);
    }

    /**
     * Change of head after one lasting change at the side.
     *
     * @param change change of head at the side (m), positive upwards
     * @param distance distance from the side (m), not negative
     * @param time time since the change (d), positive
     * @return change of head (m)
     * @throws IllegalArgumentException if the distance is negative or the time is not positive
     */
    public double headChange(double change, double distance, double time) {
        double spread = 4 * transmissivity * positive("time", time) / storativity;
        return change * ErrorIntegral.complement(notNegative("distance", distance) / Math.sqrt(spread));
    }

    /**
     * Change of head while the side follows steps.
     *
     * @param changes head at the side less its value before the first step (m)
     * @param distance distance from the side (m), not negative
     * @param time days on the clock of the steps
     * @return change of head (m)
     * @throws IllegalArgumentException if the distance is negative
     */
    public double headChange(StepSchedule changes, double distance, double time) {
        return Superposition.of(changes, time, since -> headChange(1, distance, since));
    }

    /**
     * Flow that enters through a metre of the side after one lasting change, {@code dh sqrt(T S/(pi t))}.
     *
     * @param change change of head at the side (m), positive upwards
     * @param time time since the change (d), positive
     * @return inflow for each metre of side (m²/d), positive into the aquifer
     * @throws IllegalArgumentException if the time is not positive
     */
    public double inflow(double change, double time) {
        return change * Math.sqrt(transmissivity * storativity / (Math.PI * positive("time", time)));
    }
}
