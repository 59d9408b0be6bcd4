package org.headfall.scenarios.sweep.results;

import org.headfall.scenarios.sweep.statistics.Share;

/**
 * How often something happens in the runs that have one choice in common.
 *
 * @param what what happens, such as "loss at Coolabah Spring after 10 yr above 1 m"
 * @param choice values of the listed variables that the runs share; empty for all runs
 * @param share share of the runs
 * @param sampled whether runs are samples of what is unknown, so that the share is a probability; otherwise it is a share
 *     of the combinations that were asked for
 */
public record Likelihood(String what, String choice, Share share, boolean sampled) {

    /** The share in a word, or nothing where it is no probability. */
    public String words() {
        return sampled ? share.words() : "";
    }
}
