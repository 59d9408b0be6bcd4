package org.headfall.solver.bore;

import org.headfall.solver.wording.PlainNumber;

/**
 * The water that fills a bore from its screen to its head. Hot water is lighter: the same pressure at the screen carries
 * it higher than water of the reference temperature. Heads of the aquifer are those of a column of reference
 * temperature on the middle of the screen; levels and pressures in the bore are those of the column that is really there:
 *
 * <pre>{@code head = z + (rho_mean / rho_reference) (level - z),   z: middle of the screen}</pre>
 *
 * <p>Pressure at the screen is {@code rho_mean g (level - z)} either way. Compressibility and salt are left out.
 *
 * @param wellheadTemperature temperature at the top of the column (°C), 0 to 110
 * @param screenTemperature temperature at the screen (°C), 0 to 110; between the two it changes evenly with depth
 * @param screenLevel middle of the screen (m above datum)
 */
public record WaterColumn(double wellheadTemperature, double screenTemperature, double screenLevel) {

    /** Water of the reference temperature: head is level. */
    public static final WaterColumn REFERENCE = ofOneTemperature(Water.REFERENCE_TEMPERATURE, 0);

    private static final double PASCALS_PER_KILOPASCAL = 1000;

    /** Checks the values. */
    public WaterColumn {
        Water.density(wellheadTemperature);
        Water.density(screenTemperature);
        if (!Double.isFinite(screenLevel)) {
            throw new IllegalArgumentException(
                    "the level of the screen must be finite, found " + PlainNumber.of(screenLevel) + " m");
        }
    }

    /**
     * A column of one temperature.
     *
     * @param temperature temperature (°C), 0 to 110
     * @param screenLevel middle of the screen (m above datum)
     * @return the column
     */
    public static WaterColumn ofOneTemperature(double temperature, double screenLevel) {
        return new WaterColumn(temperature, temperature, screenLevel);
    }

    /** Mean density of the column (kg/m³), by Simpson's rule over the temperatures from top to bottom. */
    public double meanDensity() {
        if (wellheadTemperature == screenTemperature) {
            return Water.density(screenTemperature);
        }
        return (Water.density(wellheadTemperature)
                        + 4 * Water.density((wellheadTemperature + screenTemperature) / 2)
                        + Water.density(screenTemperature))
                / 6;
    }

    /** Mean density over that of the reference temperature (-): metres of head per metre of level. */
    public double densityRatio() {
        return meanDensity() / Water.density(Water.REFERENCE_TEMPERATURE);
    }

    /** Mean temperature of the column (°C). */
    public double meanTemperature() {
        return (wellheadTemperature + screenTemperature) / 2;
    }

    /**
     * Head of the aquifer that carries the column to a level.
     *
     * @param level level of the water in the bore (m above datum)
     * @return head at reference temperature (m above datum)
     */
    public double head(double level) {
        return screenLevel + densityRatio() * (level - screenLevel);
    }

    /**
     * Level to which a head of the aquifer carries the column.
     *
     * @param head head at reference temperature (m above datum)
     * @return level of the water in the bore (m above datum)
     */
    public double level(double head) {
        return screenLevel + (head - screenLevel) / densityRatio();
    }

    /**
     * Pressure that a gauge on the shut bore shows.
     *
     * @param head head of the aquifer at reference temperature (m above datum)
     * @param gaugeLevel level of the gauge (m above datum)
     * @return gauge pressure (kPa), negative where the water stands below the gauge
     */
    public double gaugePressure(double head, double gaugeLevel) {
        return meanDensity() * Water.GRAVITY * (level(head) - gaugeLevel) / PASCALS_PER_KILOPASCAL;
    }

    /**
     * Head of the aquifer behind the reading of a gauge on the shut bore: the inverse of {@link #gaugePressure}.
     *
     * @param gaugePressure gauge pressure (kPa)
     * @param gaugeLevel level of the gauge (m above datum)
     * @return head at reference temperature (m above datum)
     */
    public double headOfGauge(double gaugePressure, double gaugeLevel) {
        return head(gaugeLevel + gaugePressure * PASCALS_PER_KILOPASCAL / (meanDensity() * Water.GRAVITY));
    }
}
