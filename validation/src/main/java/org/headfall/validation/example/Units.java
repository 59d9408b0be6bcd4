package org.headfall.validation.example;

/** Units of the sources. The closed forms take any consistent units: an example in feet stays in feet. */
final class Units {

    /** Cubic feet a day in a US gallon a minute: 231 cubic inches a gallon. */
    static final double CUBIC_FEET_A_DAY_PER_GALLON_A_MINUTE = 1440 * 231.0 / 1728;

    /** US gallons in a cubic foot. */
    static final double GALLONS_PER_CUBIC_FOOT = 1728.0 / 231;

    /** Metres in a foot, exact by the international yard of 1959. */
    static final double METRES_PER_FOOT = 0.3048;

    static final double CUBIC_METRES_PER_CUBIC_FOOT = METRES_PER_FOOT * METRES_PER_FOOT * METRES_PER_FOOT;

    static final double SECONDS_A_DAY = 86_400;
    static final double MINUTES_A_DAY = 1440;

    private Units() {}
}
