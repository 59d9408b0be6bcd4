package org.headfall.scenarios.recording;

import java.util.ArrayList;
import java.util.List;
import org.headfall.solver.flow.WaterBalance;

/** Adds up water balances that follow each other. */
final class BalanceSum {

    private List<WaterBalance.Term> names = List.of();
    private double[] inflow = new double[0];
    private double[] outflow = new double[0];
    private double largestStepDiscrepancy;
    private double fromDay;

    BalanceSum(double fromDay) {
        this.fromDay = fromDay;
    }

    void add(WaterBalance balance) {
        List<WaterBalance.Term> terms = balance.terms();
        if (names.isEmpty()) {
            names = terms;
            inflow = new double[terms.size()];
            outflow = new double[terms.size()];
        }
        for (int i = 0; i < terms.size(); i++) {
            inflow[i] += terms.get(i).inflow();
            outflow[i] += terms.get(i).outflow();
        }
        largestStepDiscrepancy = Math.max(largestStepDiscrepancy, balance.largestStepDiscrepancy());
    }

    /** The sum up to a day; the next sum begins there. */
    WaterBalance close(double day) {
        List<WaterBalance.Term> sums = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            WaterBalance.Term term = names.get(i);
            sums.add(new WaterBalance.Term(term.name(), term.kind(), inflow[i], outflow[i]));
        }
        WaterBalance sum = new WaterBalance(fromDay, day, sums, largestStepDiscrepancy);
        names = List.of();
        largestStepDiscrepancy = 0;
        fromDay = day;
        return sum;
    }
}
