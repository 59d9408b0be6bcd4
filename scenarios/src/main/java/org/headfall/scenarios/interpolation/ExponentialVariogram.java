package org.headfall.scenarios.interpolation;

import org.headfall.solver.wording.PlainNumber;

/**
 * Half the mean square difference of values at a distance h,
 * {@code nugget + (sill - nugget) (1 - exp(-3 h / range))} for h above 0 and 0 at 0.
 *
 * @param sill what it rises to, the variance of values far apart (square of the unit of the values), positive
 * @param range the distance at which 95 % of the rise is reached (m), positive
 * @param nuggetShare the part of the sill that is there at any distance, from 0 to less than 1: scatter of measurement
 */
public record ExponentialVariogram(double sill, double range, double nuggetShare) {
    /**
     * Checks the parameters.
     *
     * @throws IllegalArgumentException if one is out of range; the message names it and its value
     */
    public ExponentialVariogram {
        if (!(sill > 0 && Double.isFinite(sill))) {
            throw new IllegalArgumentException("a variogram needs a positive sill, found " + sill);
        }
        if (!(range > 0 && Double.isFinite(range))) {
            throw new IllegalArgumentException(
                    "a variogram needs a positive range, found " + PlainNumber.of(range) + " m");
        }
        if (!(nuggetShare >= 0 && nuggetShare < 1)) {
            throw new IllegalArgumentException("a nugget is a share from 0 to less than 1, found " + nuggetShare);
        }
    }

    /**
     * Half the mean square difference of values.
     *
     * @param distance distance of the points (m), not negative
     */
    public double at(double distance) {
        return distance == 0 ? 0 : sill * (1 - correlation(distance));
    }

    /** The part of the sill that values at a distance have in common, without the nugget: 1 - share at 0. */
    double correlation(double distance) {
        return (1 - nuggetShare) * Math.exp(-3 * distance / range);
    }
}
