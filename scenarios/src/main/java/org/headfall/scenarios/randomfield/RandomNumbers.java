package org.headfall.scenarios.randomfield;

import java.util.SplittableRandom;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well1024a;

/** Sources of random numbers that follow from a seed and a number, independent for all practical purposes. */
final class RandomNumbers {

    /** The generator's state: 1024 bits. */
    private static final int WORDS = 32;

    private RandomNumbers() {}

    /**
     * The numbers that belong to a seed and a number: WELL1024a (Panneton, L'Ecuyer and Matsumoto 2006, ACM Transactions on
     * Mathematical Software 32, 1-16), its state filled by SplitMix (Steele, Lea and Flood 2014, OOPSLA), because
     * neighbouring states begin with similar numbers.
     */
    static RandomGenerator of(long seed, int number) {
        long first = new SplittableRandom(seed).nextLong();
        long second = new SplittableRandom(first ^ number).nextLong();
        int[] state = new SplittableRandom(second).ints(WORDS).toArray();
        return new Well1024a(state);
    }
}
