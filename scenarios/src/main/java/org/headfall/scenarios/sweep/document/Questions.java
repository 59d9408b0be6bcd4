package org.headfall.scenarios.sweep.document;

import java.util.List;
import java.util.Optional;

/**
 * What is asked of the runs. The probability of crossing each limit of the base scenario is always answered.
 *
 * @param ranking by what runs are ranked
 * @param tradeOff up to three aims of which the best compromises are wanted
 * @param thresholds bounds whose probability is asked for
 * @param sensitivity names of the kept figures of which it is asked which unknown matters most
 */
public record Questions(
        Optional<Aim> ranking, List<Aim> tradeOff, List<Threshold> thresholds, List<String> sensitivity) {
    /** Copies the lists. */
    public Questions {
        tradeOff = List.copyOf(tradeOff);
        thresholds = List.copyOf(thresholds);
        sensitivity = List.copyOf(sensitivity);
    }
}
