package org.headfall.scenarios.interpolation;

/** A quantity that has a value at every point of the plane. Safe to share between threads. */
interface Surface {
    /** The value at a point, given in metres. */
    double at(double x, double y);
}
