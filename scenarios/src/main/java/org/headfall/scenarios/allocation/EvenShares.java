package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.function.Predicate;
import org.headfall.solver.allocation.Programme;
import org.headfall.solver.allocation.Row;

/**
 * Shares evenly among bores where that makes no difference: of bores that are as good as each other, a programme gives all to
 * one, whichever it comes to first. Bores take the mean of their rates where the goal stays what it was and all rows are kept.
 */
final class EvenShares {

    /** Change of the goal, as a share of it, that is none. */
    private static final double NO_DIFFERENCE = 1e-6;

    /** Amounts of what rows bound that are rounding, as a share of the bound. */
    private static final double ROUNDING = 1e-9;

    private final RateVariables variables;
    private final Programme goal;
    private final List<Row> rows;
    private final Predicate<double[]> keepsAll;
    private final double tolerance;

    /**
     * Even shares.
     *
     * @param variables the rates
     * @param goal what is to be small
     * @param rows rows that say a good part of what must be kept, fast
     * @param tolerance by how much rows that may give way may be passed
     * @param keepsAll whether rates keep all that must be kept, asked of rates that keep the rows
     */
    EvenShares(
            RateVariables variables, Programme goal, List<Row> rows, double tolerance, Predicate<double[]> keepsAll) {
        this.variables = variables;
        this.goal = goal;
        this.rows = rows;
        this.tolerance = tolerance;
        this.keepsAll = keepsAll;
    }

    /**
     * Rates with their even shares.
     *
     * @param rates rate of each variable (m³/d)
     * @param among bores that share evenly, by their number, a list for each such set
     */
    @SuppressWarnings("ArrayRecordComponent") // handed on and never compared
    record Shares(double[] rates, List<List<Integer>> among) {
        /** Copies the lists. */
        Shares {
            among = among.stream().map(List::copyOf).toList();
        }
    }

    /**
     * Evens out.
     *
     * @param best the best rates (m³/d)
     * @return rates that are as good
     */
    Shares of(double[] best) {
        double value = goal.valueOf(best);
        double[] rates = best;
        List<BitSet> sets = new ArrayList<>();
        for (int bore = 0; bore < variables.bores(); bore++) {
            BitSet alone = new BitSet();
            alone.set(bore);
            sets.add(alone);
            for (int other = 0; other < sets.size() - 1; other++) {
                BitSet together = (BitSet) sets.get(other).clone();
                together.set(bore);
                double[] even = evened(rates, together);
                if (differ(rates, even) && isAsGood(rates, even, value) && keepsAll.test(even)) {
                    rates = even;
                    sets.set(other, together);
                    sets.remove(sets.size() - 1);
                    break;
                }
            }
        }
        return new Shares(
                rates,
                sets.stream()
                        .filter(set -> set.cardinality() > 1)
                        .map(set -> set.stream().boxed().toList())
                        .toList());
    }

    /** Rates of which some bores each take the mean. */
    private double[] evened(double[] rates, BitSet together) {
        double[] even = rates.clone();
        for (int group = 0; group < variables.blocks().groups(); group++) {
            int of = group;
            double mean = together.stream()
                    .mapToDouble(bore -> rates[variables.variable(bore, of)])
                    .average()
                    .orElse(0);
            together.stream().forEach(bore -> even[variables.variable(bore, of)] = mean);
        }
        return even;
    }

    private boolean differ(double[] rates, double[] even) {
        for (int v = 0; v < rates.length; v++) {
            if (Math.abs(rates[v] - even[v]) > NO_DIFFERENCE * goal.most()[v]) {
                return true;
            }
        }
        return false;
    }

    private boolean isAsGood(double[] rates, double[] even, double value) {
        for (int v = 0; v < even.length; v++) {
            if (even[v] > goal.most()[v] * (1 + ROUNDING)) {
                return false;
            }
        }
        return goal.valueOf(even) <= value + NO_DIFFERENCE * Math.abs(value)
                && rows.stream().allMatch(row -> row.left(even) >= Math.min(0, row.left(rates)) - allowed(row));
    }

    private double allowed(Row row) {
        return Double.isFinite(row.givesWay()) ? tolerance : ROUNDING * Math.abs(row.bound());
    }
}
