package org.headfall.scenarios.findings;

import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Drawdown at one place (m), or discharge that it lost (m³/d), by cause. The causes of one split, what is no bore's doing and
 * what is not linear add up to the whole.
 *
 * @param place name of the bore, spring or protected point
 * @param whole all of it, in the full run
 * @param seasonal part of it by what bores take beyond their mean of the year
 * @param bores what each bore did
 * @param holders what the bores of each holder did
 * @param groups what existing and proposed bores did
 * @param drift what boundaries, recharge and a start that was not at rest did
 * @param notLinear what is left when all causes are taken away
 */
public record AttributedChange(
        String place,
        double whole,
        double seasonal,
        List<Cause> bores,
        List<Cause> holders,
        List<Cause> groups,
        double drift,
        double notLinear) {

    /** Copies the lists. */
    public AttributedChange {
        bores = List.copyOf(bores);
        holders = List.copyOf(holders);
        groups = List.copyOf(groups);
    }

    /**
     * What shares of the causes are told of: the same for bores, holders and groups.
     *
     * @param least smallest whole that shares are told of, in its unit
     * @return the base
     */
    public ShareBase shares(double least) {
        return ShareBase.of(
                least,
                whole,
                DoubleStream.concat(bores.stream().mapToDouble(Cause::amount), DoubleStream.of(drift, notLinear))
                        .toArray());
    }

    /**
     * What one cause did.
     *
     * @param name name of the bore, holder or group
     * @param amount its part, in the unit of the whole; negative where it gave
     */
    public record Cause(String name, double amount) {}
}
