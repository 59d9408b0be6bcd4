package org.headfall.scenarios.sweep.document;

import java.util.List;
import org.headfall.scenarios.sweep.sampling.Sampling;

/** How the runs of a sweep are chosen. */
public sealed interface Design {

    /** Every combination of the listed values. */
    record FullFactorial() implements Design {}

    /**
     * Samples of everything that varies.
     *
     * @param sampling how they are spread
     * @param samples how many
     * @param seed decides them
     * @param forEachOf names of listed variables of which every combination gets the same samples of the others
     */
    record Sampled(Sampling sampling, int samples, long seed, List<String> forEachOf) implements Design {
        /** Copies the list. */
        public Sampled {
            forEachOf = List.copyOf(forEachOf);
        }
    }

    /**
     * Samples from which Sobol indices follow: two independent sets, and for each variable the first set with its values
     * taken from the second (Saltelli and others 2010, Computer Physics Communications 181, 259-270).
     *
     * @param samples samples of a set; {@code (variables + 2)} times as many runs
     * @param seed decides them
     */
    record ForSobolIndices(int samples, long seed) implements Design {}
}
