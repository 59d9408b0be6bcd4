package org.headfall.scenarios.quantity;

/**
 * Powers of the base quantities in a unit. Pressure stands for itself, because no mass is ever entered.
 *
 * @param length power of length (m)
 * @param time power of time (d)
 * @param pressure power of pressure (kPa)
 * @param temperature power of temperature (degC)
 * @param angle power of an angle (deg)
 */
public record Exponents(int length, int time, int pressure, int temperature, int angle) {
    static final Exponents NONE = new Exponents(0, 0, 0, 0, 0);

    static Exponents of(int length, int time) {
        return new Exponents(length, time, 0, 0, 0);
    }

    Exponents plus(Exponents other) {
        return new Exponents(
                length + other.length,
                time + other.time,
                pressure + other.pressure,
                temperature + other.temperature,
                angle + other.angle);
    }

    Exponents times(int power) {
        return new Exponents(length * power, time * power, pressure * power, temperature * power, angle * power);
    }
}
