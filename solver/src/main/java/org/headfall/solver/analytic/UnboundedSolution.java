package org.headfall.solver.analytic;

/** Drawdown around a bore in an aquifer without sides, the same wherever in the plan the bore stands. */
public interface UnboundedSolution extends DrawdownField {

    /**
     * Drawdown at an offset from a bore pumped at a constant rate since time zero.
     *
     * @param rate rate taken out (m³/d)
     * @param offsetX easting of the point less that of the bore (m)
     * @param offsetY northing of the point less that of the bore (m)
     * @param time time since pumping began (d), not negative
     * @return drawdown (m)
     * @throws IllegalArgumentException if both offsets are zero or the time is negative
     */
    double drawdown(double rate, double offsetX, double offsetY, double time);

    /**
     * Whether the drawdown is the same on either side of a line along each axis through the bore, which the method of
     * images needs.
     */
    default boolean mirrorSymmetric() {
        return true;
    }

    @Override
    default double drawdown(PumpedBore bore, double x, double y, double time) {
        return Superposition.of(bore.rates(), time, since -> drawdown(1, x - bore.x(), y - bore.y(), since));
    }
}
