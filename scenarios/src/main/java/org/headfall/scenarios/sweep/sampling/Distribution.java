package org.headfall.scenarios.sweep.sampling;

import org.apache.commons.math3.distribution.NormalDistribution;

/** How likely the values of an unknown number are. */
public sealed interface Distribution {

    /**
     * The value that is exceeded with probability {@code 1 - probability}.
     *
     * @param probability more than 0 and less than 1
     * @return the value, in the unit of the parameters
     */
    double quantile(double probability);

    /**
     * The share of values that are at most as large.
     *
     * @param value a value, in the unit of the parameters
     * @return from 0 to 1
     */
    double probability(double value);

    /**
     * All values between two ends, alike.
     *
     * @param from lower end
     * @param to upper end
     */
    record Uniform(double from, double to) implements Distribution {
        /** Checks the order. */
        public Uniform {
            require(from < to, "a uniform distribution needs its lower end below its upper end");
        }

        @Override
        public double quantile(double probability) {
            return from + probability * (to - from);
        }

        @Override
        public double probability(double value) {
            return Math.min(1, Math.max(0, (value - from) / (to - from)));
        }
    }

    /**
     * The normal distribution.
     *
     * @param mean mean
     * @param deviation standard deviation
     */
    record Normal(double mean, double deviation) implements Distribution {
        /** Checks the deviation. */
        public Normal {
            require(deviation > 0, "a standard deviation is more than zero");
        }

        @Override
        public double quantile(double probability) {
            return mean + deviation * STANDARD_NORMAL.inverseCumulativeProbability(probability);
        }

        @Override
        public double probability(double value) {
            return STANDARD_NORMAL.cumulativeProbability((value - mean) / deviation);
        }
    }

    /**
     * Values whose natural logarithm is normal.
     *
     * @param median median, positive
     * @param deviationOfLog standard deviation of the natural logarithm
     */
    record Lognormal(double median, double deviationOfLog) implements Distribution {
        /** A factor of 20,000 one deviation off: more is a slip of the finger. Common practice, no source. */
        public static final double LARGEST_DEVIATION_OF_LOG = 10;

        /** Checks the parameters. */
        public Lognormal {
            require(median > 0 && deviationOfLog > 0, "median and deviation of a lognormal are more than zero");
            require(deviationOfLog <= LARGEST_DEVIATION_OF_LOG, "the deviation of the logarithm is at most 10");
        }

        @Override
        public double quantile(double probability) {
            return median * Math.exp(deviationOfLog * STANDARD_NORMAL.inverseCumulativeProbability(probability));
        }

        @Override
        public double probability(double value) {
            return value <= 0 ? 0 : STANDARD_NORMAL.cumulativeProbability(Math.log(value / median) / deviationOfLog);
        }
    }

    /**
     * A density that rises straight from the least to the likeliest value and falls straight to the greatest.
     *
     * @param least least value
     * @param likely likeliest value
     * @param most greatest value
     */
    record Triangular(double least, double likely, double most) implements Distribution {
        /** Checks the order. */
        public Triangular {
            require(
                    least <= likely && likely <= most && least < most,
                    "a triangular distribution needs its three values in order");
        }

        @Override
        public double quantile(double probability) {
            double width = most - least;
            double rising = (likely - least) / width;
            return probability < rising
                    ? least + Math.sqrt(probability * width * (likely - least))
                    : most - Math.sqrt((1 - probability) * width * (most - likely));
        }

        @Override
        public double probability(double value) {
            if (value <= least || value >= most) {
                return value <= least ? 0 : 1;
            }
            return value < likely
                    ? square(value - least) / ((most - least) * (likely - least))
                    : 1 - square(most - value) / ((most - least) * (most - likely));
        }

        private static double square(double length) {
            return length * length;
        }
    }

    /**
     * A distribution of which only the values between two ends can occur; their shares keep their proportions.
     *
     * @param whole the distribution before it is cut
     * @param atLeast lower end; negative infinity for none
     * @param atMost upper end; infinity for none
     */
    record Truncated(Distribution whole, double atLeast, double atMost) implements Distribution {
        /** Checks that something is left. */
        public Truncated {
            require(
                    whole.probability(atMost) > whole.probability(atLeast),
                    "the ends at_least and at_most leave nothing of the distribution");
        }

        @Override
        public double quantile(double probability) {
            double low = whole.probability(atLeast);
            double high = whole.probability(atMost);
            double value = whole.quantile(low + probability * (high - low));
            return Math.min(atMost, Math.max(atLeast, value));
        }

        @Override
        public double probability(double value) {
            double low = whole.probability(atLeast);
            double share = (whole.probability(value) - low) / (whole.probability(atMost) - low);
            return Math.min(1, Math.max(0, share));
        }
    }

    /** The normal distribution with mean 0 and deviation 1; it draws nothing by itself. */
    NormalDistribution STANDARD_NORMAL = new NormalDistribution(null, 0, 1);

    private static void require(boolean holds, String message) {
        if (!holds) {
            throw new IllegalArgumentException(message);
        }
    }
}
