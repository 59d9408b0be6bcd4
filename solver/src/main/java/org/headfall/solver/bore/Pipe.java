package org.headfall.solver.bore;

import org.headfall.solver.wording.PlainNumber;

/**
 * Casing or riser through which water comes up: what friction and velocity take of its head.
 *
 * @param diameter inner diameter (m), positive
 * @param length length from the screen or pump to the outlet (m), not negative
 * @param roughness height of the wall's roughness (m), at most a twentieth of the diameter
 * @param viscosity kinematic viscosity of the water (m²/d), positive
 */
public record Pipe(double diameter, double length, double roughness, double viscosity) {

    /** Roughness over diameter up to which the friction formula was measured (Moody 1944, Trans. ASME 66, 671-684). */
    public static final double LARGEST_RELATIVE_ROUGHNESS = 0.05;

    /** Checks the values. */
    public Pipe {
        if (!(diameter > 0 && length >= 0 && viscosity > 0 && Double.isFinite(diameter) && Double.isFinite(length))) {
            throw new IllegalArgumentException(
                    "a pipe needs a positive diameter and viscosity and a length, found " + PlainNumber.of(diameter)
                            + " m, " + PlainNumber.of(viscosity) + " m2/d, " + PlainNumber.of(length) + " m");
        }
        if (!(roughness >= 0 && roughness <= LARGEST_RELATIVE_ROUGHNESS * diameter)) {
            throw new IllegalArgumentException("the roughness of a pipe must lie between 0 and a twentieth of its"
                    + " diameter, found " + PlainNumber.of(roughness) + " m with " + PlainNumber.of(diameter) + " m");
        }
    }

    /**
     * Head lost by friction along the pipe and by the velocity that the water has on leaving it.
     *
     * @param discharge discharge (m³/d), not negative
     * @return {@code f L/D v²/(2 g) + v²/(2 g)} (m)
     */
    public double loss(double discharge) {
        double velocity = velocity(discharge);
        return frictionScale() * PipeFriction.number(reynolds(discharge), roughness / diameter)
                + velocity * velocity / (2 * Water.gravityPerDay());
    }

    /**
     * Increase of the loss with discharge.
     *
     * @param discharge discharge (m³/d), not negative
     * @return slope (d/m²), positive
     */
    public double slope(double discharge) {
        double reynoldsPerDischarge = 4 / (Math.PI * diameter * viscosity);
        return frictionScale() * PipeFriction.slope(reynolds(discharge), roughness / diameter) * reynoldsPerDischarge
                + velocity(discharge) * velocity(1) / Water.gravityPerDay();
    }

    /** Mean velocity (m/d) at a discharge (m³/d). */
    public double velocity(double discharge) {
        return 4 * discharge / (Math.PI * diameter * diameter);
    }

    /** Reynolds number (-) at a discharge (m³/d). */
    public double reynolds(double discharge) {
        return velocity(discharge) * diameter / viscosity;
    }

    private double frictionScale() {
        return length * viscosity * viscosity / (2 * Water.gravityPerDay() * diameter * diameter * diameter);
    }
}
