package org.headfall.scenarios.allocation;

import java.util.TreeSet;

/** Rates by date: the days on which any of them changes, and what each bore takes from there on. */
final class RateSchedule {

    private final AllocationResult result;

    RateSchedule(AllocationResult result) {
        this.result = result;
    }

    /** Days on which rates may change (d), the start among them, in order of time. */
    double[] days() {
        TreeSet<Double> days = new TreeSet<>();
        days.add(0.0);
        result.blocks().blocks().forEach(block -> {
            days.add(block.start());
            days.add(block.end());
        });
        days.removeIf(day -> day >= result.run().endDay());
        return days.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Rate of a bore from a day on (m³/d); 0 on days in no season. */
    double rate(AllocationResult.BoreRates bore, double day) {
        return result.blocks().blocks().stream()
                .filter(block -> block.start() <= day && day < block.end())
                .mapToDouble(block -> bore.rates().get(block.group()))
                .findFirst()
                .orElse(0);
    }
}
