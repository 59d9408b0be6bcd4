package org.headfall.scenarios.randomfield;

/**
 * How much values at two places have in common: a model of correlation whose range differs with direction (geometric
 * anisotropy, Chilès and Delfiner 2012, section 2.5.2).
 *
 * @param model how correlation falls with distance
 * @param variance variance of the values (square of their unit), positive
 * @param range range in the direction in which it is longest (m), positive
 * @param alongOverAcross that range over the one across it, at least 1
 * @param direction direction of the longest range (degrees clockwise from north)
 */
public record Covariance(
        CorrelationModel model, double variance, double range, double alongOverAcross, double direction) {
    /**
     * Checks the parameters.
     *
     * @throws IllegalArgumentException if one is out of range; the message names it and its value
     */
    public Covariance {
        require(variance > 0, "variance", variance);
        require(range > 0, "range", range);
        require(alongOverAcross >= 1, "ratio of ranges", alongOverAcross);
        require(Double.isFinite(direction), "direction", direction);
    }

    private static void require(boolean holds, String name, double value) {
        if (!holds || Double.isInfinite(value)) {
            throw new IllegalArgumentException("a covariance cannot have the " + name + " " + value);
        }
    }

    /**
     * Covariance of values at two places.
     *
     * @param east how far one is east of the other (m)
     * @param north how far it is north (m)
     */
    public double at(double east, double north) {
        double angle = Math.toRadians(direction);
        double along = east * Math.sin(angle) + north * Math.cos(angle);
        double across = east * Math.cos(angle) - north * Math.sin(angle);
        return variance * model.at(Math.hypot(along, across * alongOverAcross) / range);
    }

    /** The longest distance along x at which values can be as alike as at the range (m). */
    double reachEast() {
        double angle = Math.toRadians(direction);
        return range * Math.hypot(Math.sin(angle), Math.cos(angle) / alongOverAcross);
    }

    /** The longest distance along y at which values can be as alike as at the range (m). */
    double reachNorth() {
        double angle = Math.toRadians(direction);
        return range * Math.hypot(Math.cos(angle), Math.sin(angle) / alongOverAcross);
    }
}
