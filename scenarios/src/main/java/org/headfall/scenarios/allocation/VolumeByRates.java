package org.headfall.scenarios.allocation;

import java.util.BitSet;
import java.util.List;
import org.headfall.scenarios.quantity.VolumeUnit;

/** What rates take in parts of water years: exactly linear in them. */
final class VolumeByRates {

    private final RateVariables variables;

    /**
     * Part of a water year.
     *
     * @param fromDay its first day (d)
     * @param toDay its end, not included (d)
     * @param bores which of the bores whose rates are looked for count; not to be changed
     * @param metered what meters show in it of bores whose rates do not count (ML)
     */
    record Part(double fromDay, double toDay, BitSet bores, double metered) {
        /** Days of a block that lie in it. */
        double daysOf(RateBlocks.Block block) {
            return Math.max(0, Math.min(toDay, block.end()) - Math.max(fromDay, block.start()));
        }
    }

    VolumeByRates(RateVariables variables) {
        this.variables = variables;
    }

    /** Volume by a unit of each variable (ML by m³/d). */
    double[] coefficients(Part part) {
        double[] coefficients = new double[variables.count()];
        for (RateBlocks.Block block : variables.blocks().blocks()) {
            double volume = VolumeUnit.MEGALITRES.of(part.daysOf(block));
            if (volume > 0) {
                part.bores().stream().forEach(bore -> coefficients[variables.variable(bore, block.group())] += volume);
            }
        }
        return coefficients;
    }

    /** Volume by rates in each part (ML). */
    double[] of(double[] rates, List<Part> parts) {
        return parts.stream().mapToDouble(part -> of(rates, part)).toArray();
    }

    private double of(double[] rates, Part part) {
        double sum = 0;
        for (RateBlocks.Block block : variables.blocks().blocks()) {
            double days = part.daysOf(block);
            if (days > 0) {
                for (int b = part.bores().nextSetBit(0);
                        b >= 0;
                        b = part.bores().nextSetBit(b + 1)) {
                    sum += days * rates[variables.variable(b, block.group())];
                }
            }
        }
        return VolumeUnit.MEGALITRES.of(sum);
    }
}
