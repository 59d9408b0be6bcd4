package org.headfall.scenarios.report.page;

import java.util.List;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.flow.WaterBalance.Kind;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The water balance over time: mean flow into the aquifer by each kind of term, period by period. */
final class BalanceData {

    private BalanceData() {}

    static void put(ObjectNode node, List<WaterBalance> balances) {
        ArrayNode until = node.putArray("until");
        balances.forEach(balance -> until.add(balance.toDay()));
        List<Kind> kinds = balances.stream()
                .flatMap(balance -> balance.terms().stream())
                .map(WaterBalance.Term::kind)
                .distinct()
                .sorted()
                .toList();
        ArrayNode terms = node.putArray("terms");
        for (Kind kind : kinds) {
            ObjectNode term = terms.addObject();
            term.put("words", BalanceTables.title(kind));
            ArrayNode rates = term.putArray("rates");
            balances.forEach(balance -> rates.add(Math.round(rate(balance, kind) * 10) / 10.0));
        }
    }

    /** Mean net flow into the aquifer (m³/d). */
    private static double rate(WaterBalance balance, Kind kind) {
        double volume = balance.terms().stream()
                .filter(term -> term.kind() == kind)
                .mapToDouble(term -> term.inflow() - term.outflow())
                .sum();
        return volume / (balance.toDay() - balance.fromDay());
    }
}
