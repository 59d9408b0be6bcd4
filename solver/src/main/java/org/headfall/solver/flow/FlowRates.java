package org.headfall.solver.flow;

import java.util.Arrays;

/** Rates of all terms of the water balance at one moment (m³/d), inflow and outflow apart. */
final class FlowRates {

    private final double[] inflow;
    private final double[] outflow;

    FlowRates(int terms) {
        inflow = new double[terms];
        outflow = new double[terms];
    }

    void clear() {
        Arrays.fill(inflow, 0);
        Arrays.fill(outflow, 0);
    }

    /** Adds a flow to a term: inflow where positive, outflow where negative. */
    void add(int term, double flow) {
        if (flow > 0) {
            inflow[term] += flow;
        } else {
            outflow[term] -= flow;
        }
    }

    /** Adds another moment's rates times a weight: with a weight in days the sums are volumes. */
    void addWeighted(FlowRates other, double weight) {
        for (int term = 0; term < inflow.length; term++) {
            inflow[term] += weight * other.inflow[term];
            outflow[term] += weight * other.outflow[term];
        }
    }

    double inflow(int term) {
        return inflow[term];
    }

    double outflow(int term) {
        return outflow[term];
    }

    double totalInflow() {
        return Arrays.stream(inflow).sum();
    }

    double totalOutflow() {
        return Arrays.stream(outflow).sum();
    }
}
