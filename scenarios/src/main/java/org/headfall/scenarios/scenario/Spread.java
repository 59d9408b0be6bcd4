package org.headfall.scenarios.scenario;

/** How values at points are spread over the area between them. */
public enum Spread {
    /** The value of the nearest point. */
    NEAREST,
    /** Mean of the values weighted by the inverse square of the distance. */
    INVERSE_DISTANCE,
    /** The same with logarithms of the values. */
    LOG_INVERSE_DISTANCE,
    /** Ordinary kriging. */
    KRIGING,
    /** Ordinary kriging of the logarithms of the values. */
    LOG_KRIGING
}
