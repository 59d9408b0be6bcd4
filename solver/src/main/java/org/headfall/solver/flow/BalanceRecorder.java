package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.List;
import org.headfall.solver.time.Step;

/**
 * Adds up the water balance of a run. Volumes of a step follow the same weights as the step itself, so they close to
 * the accuracy of the linear solver, whatever the length of the step.
 */
final class BalanceRecorder {

    private static final int STAGES = 3;

    private final List<WaterBalance.Term> terms;
    private final FlowRates[] stageRates = new FlowRates[STAGES];
    private final FlowRates stepVolumes;
    private FlowRates volumes;
    private double since;
    private double largestDiscrepancy;
    private double largestOfRun;

    /**
     * Recorder.
     *
     * @param terms names and kinds of all terms; term 0 is storage
     * @param day start of the first balance (d)
     */
    BalanceRecorder(List<WaterBalance.Term> terms, double day) {
        this.terms = List.copyOf(terms);
        for (int stage = 0; stage < STAGES; stage++) {
            stageRates[stage] = new FlowRates(terms.size());
        }
        stepVolumes = new FlowRates(terms.size());
        volumes = new FlowRates(terms.size());
        since = day;
    }

    /** Rates of a stage, 1 to 3, to be filled by the flow equation (m³/d). */
    FlowRates stage(int stage) {
        return stageRates[stage - 1];
    }

    /** The next step begins where the last ended: its first stage is the last one's third. */
    void continueFromLastStage() {
        FlowRates spent = stageRates[0];
        stageRates[0] = stageRates[2];
        stageRates[2] = spent;
    }

    /**
     * Adds an accepted step.
     *
     * @param step the step
     * @param released water released by each cell in the step (m³)
     * @param loops runs the loops over all cells
     */
    void add(Step step, double[] released, CellLoops loops) {
        stepVolumes.clear();
        for (int stage = 1; stage <= STAGES; stage++) {
            stepVolumes.addWeighted(stageRates[stage - 1], step.weight(stage));
        }
        loops.addFlows(released, stepVolumes, 0);
        double inflow = stepVolumes.totalInflow();
        double outflow = stepVolumes.totalOutflow();
        double throughput = Math.max(inflow, outflow);
        if (throughput > WaterBalance.LEAST_THROUGHPUT) {
            largestDiscrepancy = Math.max(largestDiscrepancy, Math.abs(inflow - outflow) / throughput);
        }
        volumes.addWeighted(stepVolumes, 1);
    }

    /** Closes the balance at a day and begins the next. */
    WaterBalance close(double day) {
        List<WaterBalance.Term> filled = new ArrayList<>();
        for (int term = 0; term < terms.size(); term++) {
            WaterBalance.Term name = terms.get(term);
            filled.add(new WaterBalance.Term(name.name(), name.kind(), volumes.inflow(term), volumes.outflow(term)));
        }
        WaterBalance balance = new WaterBalance(since, day, filled, largestDiscrepancy);
        largestOfRun = Math.max(largestOfRun, largestDiscrepancy);
        largestDiscrepancy = 0;
        volumes = new FlowRates(terms.size());
        since = day;
        return balance;
    }

    /** Largest discrepancy of a step over its throughput, of all closed balances (-). */
    double largestOfRun() {
        return largestOfRun;
    }
}
