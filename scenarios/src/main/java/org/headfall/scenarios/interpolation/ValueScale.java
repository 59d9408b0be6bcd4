package org.headfall.scenarios.interpolation;

/** Whether values or their logarithms are spread. */
public enum ValueScale {
    /** The values. */
    PLAIN {
        @Override
        double forward(double value) {
            return value;
        }

        @Override
        double back(double value) {
            return value;
        }
    },

    /**
     * The natural logarithms of values, which must be positive: for transmissivity, whose logarithm varies evenly. The
     * result is the exponential of the spread logarithm, the median rather than the mean of what may be there, which is
     * also what flow in the plane responds to (G. Matheron 1967, Éléments pour une théorie des milieux poreux).
     */
    LOGARITHMIC {
        @Override
        double forward(double value) {
            if (!(value > 0)) {
                throw new IllegalArgumentException("a logarithm needs positive values, found " + value);
            }
            return Math.log(value);
        }

        @Override
        double back(double value) {
            return Math.exp(value);
        }
    };

    abstract double forward(double value);

    abstract double back(double value);
}
