package org.headfall.scenarios.quantity;

import org.jspecify.annotations.Nullable;

/**
 * Powers of the base quantities in a unit. Pressure stands for itself, because no mass is ever entered.
 *
 * <p>What makes two of them equal is written out: Java builds the usual comparison of a record when it is first called,
 * and that takes longer than reading a whole document.
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

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Exponents exponents
                && length == exponents.length
                && time == exponents.time
                && pressure == exponents.pressure
                && temperature == exponents.temperature
                && angle == exponents.angle;
    }

    @Override
    public int hashCode() {
        int hash = length;
        for (int power : new int[] {time, pressure, temperature, angle}) {
            hash = 31 * hash + power;
        }
        return hash;
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
