package org.headfall.scenarios.randomfield;

/**
 * How correlation falls with distance, as in J.-P. Chilès and P. Delfiner 2012, Geostatistics, 2nd edition, section
 * 2.5.1. The range is where 5 % of it are left, or none of a spherical model (the practical range).
 */
public enum CorrelationModel {
    /** {@code exp(-3 h)}: rough at short distances. */
    EXPONENTIAL {
        @Override
        double at(double distanceOverRange) {
            return Math.exp(-3 * distanceOverRange);
        }
    },
    /** {@code 1 - 1.5 h + 0.5 h^3} up to the range, nothing beyond. */
    SPHERICAL {
        @Override
        double at(double distanceOverRange) {
            double h = Math.min(1, distanceOverRange);
            return 1 - 1.5 * h + 0.5 * h * h * h;
        }
    },
    /** {@code exp(-3 h^2)}: smooth. */
    GAUSSIAN {
        @Override
        double at(double distanceOverRange) {
            return Math.exp(-3 * distanceOverRange * distanceOverRange);
        }
    };

    /** Correlation of values at a distance h, given over the range. */
    abstract double at(double distanceOverRange);
}
