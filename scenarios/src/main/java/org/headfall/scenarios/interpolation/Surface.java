package org.headfall.scenarios.interpolation;

/** A quantity that has a value at every point of the plane. */
interface Surface {
    /** The value at a point, given in metres. */
    double at(double x, double y);
}
