package org.headfall.validation.simulator;

import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.simulation.Snapshot;

/**
 * A recorded day of a run, kept.
 *
 * @param day the day (d)
 * @param head head of each cell (m)
 * @param wallHead head at the wall of each bore (m)
 * @param rate discharge of each bore (m³/d)
 * @param balance water that passed since the day recorded before
 */
@SuppressWarnings("ArrayRecordComponent") // results that are read once, never compared
record State(double day, double[] head, double[] wallHead, double[] rate, WaterBalance balance) {

    static State of(Snapshot snapshot) {
        return new State(
                snapshot.day(),
                snapshot.head().clone(),
                snapshot.boreWallHead().clone(),
                snapshot.boreRate().clone(),
                snapshot.balance());
    }

    /** Inflow less outflow of a term of the balance since the day recorded before (m³). */
    double inflow(String term) {
        return balance.terms().stream()
                .filter(candidate -> candidate.name().equals(term))
                .mapToDouble(candidate -> candidate.inflow() - candidate.outflow())
                .sum();
    }
}
