package org.headfall.scenarios.sweep.statistics;

import java.util.Arrays;
import java.util.stream.IntStream;

/** The best compromises between aims (Pareto 1906): those that no other beats in one aim without losing in another. */
public final class Compromises {

    private Compromises() {}

    /**
     * Picks them.
     *
     * @param goodness of each candidate, how good it is by each aim, larger being better; candidates with NaN are none
     * @return their places, in order
     */
    public static int[] among(double[][] goodness) {
        int[] candidates = IntStream.range(0, goodness.length)
                .filter(i -> Arrays.stream(goodness[i]).noneMatch(Double::isNaN))
                .toArray();
        return Arrays.stream(candidates)
                .filter(i -> Arrays.stream(candidates).noneMatch(j -> beats(goodness[j], goodness[i])))
                .toArray();
    }

    private static boolean beats(double[] one, double[] other) {
        boolean better = false;
        for (int aim = 0; aim < one.length; aim++) {
            if (one[aim] < other[aim]) {
                return false;
            }
            better |= one[aim] > other[aim];
        }
        return better;
    }
}
