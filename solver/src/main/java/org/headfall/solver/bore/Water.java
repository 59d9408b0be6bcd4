package org.headfall.solver.bore;

import org.headfall.solver.wording.PlainNumber;

/** Properties of fresh water at a pressure of one atmosphere. */
public final class Water {

    /** Temperature to which all heads are referred (°C): what a column of water weighs follows from it. */
    public static final double REFERENCE_TEMPERATURE = 20;

    /** Acceleration of gravity (m/s²), the standard value. */
    public static final double GRAVITY = 9.80665;

    private static final double SECONDS_PER_DAY = 86_400;
    private static final double HOTTEST = 110;
    private static final double ABSOLUTE_ZERO = -273.15;

    private Water() {}

    /**
     * Density of fresh water free of air (Kell 1975, J. Chem. Eng. Data 20, 97-105).
     *
     * @param temperature temperature (°C), 0 to 110
     * @return density (kg/m³)
     * @throws IllegalArgumentException if the temperature is out of range
     */
    public static double density(double temperature) {
        double t = checked(temperature);
        return (999.83952
                        + t
                                * (16.945176
                                        + t
                                                * (-7.9870401e-3
                                                        + t
                                                                * (-46.170461e-6
                                                                        + t * (105.56302e-9 - t * 280.54253e-12)))))
                / (1 + 16.879850e-3 * t);
    }

    /**
     * Kinematic viscosity of fresh water: dynamic viscosity by IAPWS (2008, Supplementary Release on Properties of
     * Liquid Water at 0.1 MPa, the sum of four powers) over density.
     *
     * @param temperature temperature (°C), 0 to 110
     * @return kinematic viscosity (m²/d)
     * @throws IllegalArgumentException if the temperature is out of range
     */
    public static double kinematicViscosity(double temperature) {
        double ratio = (checked(temperature) - ABSOLUTE_ZERO) / 300;
        double microPascalSeconds = 280.68 * Math.pow(ratio, -1.9)
                + 511.45 * Math.pow(ratio, -7.7)
                + 61.131 * Math.pow(ratio, -19.6)
                + 0.45903 * Math.pow(ratio, -40);
        return 1e-6 * microPascalSeconds / density(temperature) * SECONDS_PER_DAY;
    }

    /** Acceleration of gravity in the units of the solver (m/d²). */
    static double gravityPerDay() {
        return GRAVITY * SECONDS_PER_DAY * SECONDS_PER_DAY;
    }

    private static double checked(double temperature) {
        if (!(temperature >= 0 && temperature <= HOTTEST)) {
            throw new IllegalArgumentException("the temperature of water must lie between 0 and "
                    + PlainNumber.of(HOTTEST) + " degC, found " + PlainNumber.of(temperature) + " degC");
        }
        return temperature;
    }
}
