package org.headfall.scenarios.sweep.sampling;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.commons.math3.random.SobolSequenceGenerator;

/** Ways to spread points over the unit cube. Every coordinate is more than 0 and less than 1. */
public enum Sampling {
    /**
     * Latin hypercube: of n points, each n-th part of each axis holds exactly one, anywhere in it (McKay, Beckman and
     * Conover 1979, Technometrics 21, 239-245).
     */
    LATIN_HYPERCUBE {
        @Override
        public double[][] points(int count, int axes, long seed) {
            SplittableRandom random = new SplittableRandom(seed);
            double[][] points = new double[count][axes];
            for (int axis = 0; axis < axes; axis++) {
                int[] order = shuffled(count, random);
                for (int k = 0; k < count; k++) {
                    points[k][axis] = inside((order[k] + random.nextDouble()) / count);
                }
            }
            return points;
        }
    },
    /**
     * Sobol sequence with the direction numbers of Joe and Kuo (2008), shifted by a random vector, the sum taken modulo 1
     * (Cranley and Patterson 1976, SIAM Journal on Numerical Analysis 13, 904-914), so that the seed matters and no
     * coordinate is 0. Evenest for a power of two points.
     */
    SOBOL_SEQUENCE {
        @Override
        public double[][] points(int count, int axes, long seed) {
            if (axes == 0) {
                return new double[count][0];
            }
            SobolSequenceGenerator sequence = new SobolSequenceGenerator(axes);
            double[] shift = new SplittableRandom(seed).doubles(axes).toArray();
            double[][] points = new double[count][];
            for (int k = 0; k < count; k++) {
                double[] point = sequence.nextVector();
                Arrays.setAll(point, axis -> inside((point[axis] + shift[axis]) % 1));
                points[k] = point;
            }
            return points;
        }
    };

    /** Most axes that there are direction numbers for. */
    public static final int MOST_AXES = 1000;

    /** Least coordinate, and least distance from 1: normal scores of coordinates must stay finite. */
    public static final double LEAST_COORDINATE = 1e-15;

    /**
     * Points in the unit cube.
     *
     * @param count how many points, at least 1
     * @param axes how many coordinates each has, at most {@link #MOST_AXES}
     * @param seed decides the points
     * @return coordinates by point and axis
     */
    public abstract double[][] points(int count, int axes, long seed);

    private static double inside(double coordinate) {
        return Math.min(1 - LEAST_COORDINATE, Math.max(LEAST_COORDINATE, coordinate));
    }

    /** Fisher and Yates, as in Knuth, The Art of Computer Programming 2, algorithm 3.4.2 P. */
    private static int[] shuffled(int count, SplittableRandom random) {
        int[] order = new int[count];
        Arrays.setAll(order, k -> k);
        for (int k = count - 1; k > 0; k--) {
            int other = random.nextInt(k + 1);
            int kept = order[k];
            order[k] = order[other];
            order[other] = kept;
        }
        return order;
    }
}
