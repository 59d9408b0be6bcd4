package org.headfall.validation.benchmark;

/** The generator SplitMix64 (Steele, Lea and Flood 2014, "Fast splittable pseudorandom number generators", figure 17). */
final class SplitMix64 {
    private long state;

    SplitMix64(long state) {
        this.state = state;
    }

    /** Returns the next number in [0, 1), a multiple of 2^-53. */
    double nextUniform() {
        state += 0x9E3779B97F4A7C15L;
        long z = state;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        z ^= z >>> 31;
        return (z >>> 11) * 0x1.0p-53;
    }
}
