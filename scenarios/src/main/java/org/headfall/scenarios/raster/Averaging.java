package org.headfall.scenarios.raster;

/** How values of several raster cells become one. */
public enum Averaging {
    /** The weighted sum: for levels, thicknesses, rates per area. */
    ARITHMETIC {
        @Override
        double forward(double value) {
            return value;
        }

        @Override
        double back(double value) {
            return value;
        }
    },

    /** The exponential of the weighted sum of logarithms: for transmissivity and conductivity, which must be positive. */
    GEOMETRIC {
        @Override
        double forward(double value) {
            if (!(value > 0)) {
                throw new IllegalArgumentException(
                        "a geometric mean needs positive values, found " + value + " in the raster");
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
