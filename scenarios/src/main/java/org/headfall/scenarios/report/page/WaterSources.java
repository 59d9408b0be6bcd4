package org.headfall.scenarios.report.page;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.flow.WaterBalance.Kind;
import org.headfall.solver.flow.WaterBalance.Term;

/**
 * Where the water of a run comes from over its whole period.
 *
 * @param taken volume that the bores took (m³)
 * @param net volume that came in through each kind of source less what went out through it (m³), where more came in
 * @param discrepancy largest discrepancy of a step, as a share of what passed
 */
record WaterSources(double taken, Map<Kind, Double> net, double discrepancy) {

    private static final Map<Kind, String> WORDS = new EnumMap<>(Map.of(
            Kind.STORAGE, "from storage in the aquifer",
            Kind.SEALING_BED_STORAGE, "from storage in the sealing bed",
            Kind.LEAKAGE, "through the sealing bed from above",
            Kind.BOUNDARY, "through the sides of the area",
            Kind.RECHARGE, "from recharge",
            Kind.SPRING, "from springs",
            Kind.BORE, "from bores"));

    /** Sources of a balance, empty if nothing came in. */
    static Optional<WaterSources> of(List<WaterBalance> balances) {
        Map<Kind, Double> net = new EnumMap<>(Kind.class);
        double taken = 0;
        double discrepancy = 0;
        for (WaterBalance balance : balances) {
            for (Term term : balance.terms()) {
                net.merge(term.kind(), term.inflow() - term.outflow(), Double::sum);
                taken += term.kind() == Kind.BORE ? term.outflow() : 0;
            }
            discrepancy = Math.max(discrepancy, balance.largestStepDiscrepancy());
        }
        net.values().removeIf(volume -> volume <= 0);
        return net.isEmpty() ? Optional.empty() : Optional.of(new WaterSources(taken, net, discrepancy));
    }

    /** Such as "Of the water that came in, 60 % came from recharge ...". */
    Sentence sentence() {
        double all = net.values().stream().mapToDouble(Double::doubleValue).sum();
        List<String> shares = net.entrySet().stream()
                .sorted(Map.Entry.comparingByValue(Comparator.reverseOrder()))
                .filter(source -> source.getValue() >= 0.005 * all)
                .map(source -> Words.number(100 * source.getValue() / all, 0) + "\u00a0% came "
                        + WORDS.getOrDefault(source.getKey(), source.getKey().name()))
                .toList();
        return Sentence.of("The bores took ")
                .and(Quantity.VOLUME, taken)
                .and(" over the whole period. Of the water that fed bores and springs, " + Words.all(shares) + ".");
    }

    /** How well the balance closes. */
    String closure() {
        return String.format(
                Locale.ROOT,
                "The largest part of a step's water that the numbers fail to account for is %.1e of what passed in it.",
                discrepancy);
    }
}
