package org.headfall.scenarios.findings;

import java.util.OptionalDouble;

/** Pressure of a column of fresh water at 20 °C: density 998.2 kg/m³ (Kell 1975) times 9.80665 m/s², 9.79 kPa a metre. */
public final class HeadPressure {

    /** Pressure per metre of head (kPa/m) at 20 °C. */
    private static final double KILOPASCALS_PER_METRE = 9.79;

    private HeadPressure() {}

    /**
     * Gauge pressure at the ground of a bore that is shut.
     *
     * @param headAboveGround head above the ground (m)
     * @return pressure (kPa), absent where head lies below the ground and a gauge would show nothing
     */
    public static OptionalDouble atGround(double headAboveGround) {
        return headAboveGround >= 0
                ? OptionalDouble.of(headAboveGround * KILOPASCALS_PER_METRE)
                : OptionalDouble.empty();
    }
}
