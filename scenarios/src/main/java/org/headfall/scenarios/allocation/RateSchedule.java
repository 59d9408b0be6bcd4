package org.headfall.scenarios.allocation;

import java.util.Arrays;

/** Rates by date: the days on which any of them changes, and what each bore takes from there on. */
final class RateSchedule {

    private final AllocationResult result;

    RateSchedule(AllocationResult result) {
        this.result = result;
    }

    /** Days on which rates may change (d), the start among them, in order of time. */
    double[] days() {
        return Arrays.stream(result.blocks().changeDays())
                .filter(day -> day < result.run().endDay())
                .toArray();
    }

    /** Rate of a bore from a day on (m³/d); 0 on days in no season. */
    double rate(AllocationResult.BoreRates bore, double day) {
        return result.blocks()
                .from(day)
                .map(block -> bore.rates().get(block.group()))
                .orElse(0.0);
    }
}
