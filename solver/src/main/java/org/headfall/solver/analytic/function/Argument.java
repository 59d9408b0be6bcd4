package org.headfall.solver.analytic.function;

import org.headfall.solver.wording.PlainNumber;

/** Refuses arguments outside their range, naming the argument, its value and what is allowed. */
public final class Argument {
    private Argument() {}

    /**
     * Passes a finite positive value through.
     *
     * @param name what the value is, in words, for the message
     * @param value the value
     * @return the value
     * @throws IllegalArgumentException if the value is not finite or not above zero
     */
    public static double positive(String name, double value) {
        if (value > 0 && Double.isFinite(value)) {
            return value;
        }
        throw new IllegalArgumentException(name + " must be a positive number, found " + PlainNumber.of(value));
    }

    /**
     * Passes a finite value of zero or more through.
     *
     * @param name what the value is, in words, for the message
     * @param value the value
     * @return the value
     * @throws IllegalArgumentException if the value is not finite or below zero
     */
    public static double notNegative(String name, double value) {
        if (value >= 0 && Double.isFinite(value)) {
            return value;
        }
        throw new IllegalArgumentException(name + " must be zero or a positive number, found " + PlainNumber.of(value));
    }

    /**
     * Passes any finite value through.
     *
     * @param name what the value is, in words, for the message
     * @param value the value
     * @return the value
     * @throws IllegalArgumentException if the value is infinite or not a number
     */
    public static double finite(String name, double value) {
        if (Double.isFinite(value)) {
            return value;
        }
        throw new IllegalArgumentException(name + " must be a finite number, found " + PlainNumber.of(value));
    }
}
