package org.headfall.scenarios.allocation;

import java.util.BitSet;
import java.util.Optional;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.solver.response.CoupledResponses;

/** Drawdown at stations by rates of bores in blocks of time, linear in the rates: one variable a bore and group of blocks. */
interface DrawdownByRates {

    /**
     * Whose taking counts.
     *
     * @param bores which of the looked-for bores; not to be changed
     * @param without the run without these bores that the run is compared with; absent if all count
     */
    record Counted(BitSet bores, Optional<Comparison> without) {}

    /**
     * Drawdown at all stations, and what bores and springs that follow head give less whoever counts.
     *
     * @param rates rate of each variable (m³/d)
     * @param counted whose taking counts
     * @param days days wanted, increasing (d)
     */
    CoupledResponses.Changes on(double[] rates, Counted counted, double[] days);

    /**
     * Drawdown at a station on a day by a unit of each variable.
     *
     * @param station the station
     * @param counted whose taking counts
     * @param day the day (d)
     * @return drawdown per rate of each variable (d/m²)
     */
    double[] by(int station, Counted counted, double day);

    /**
     * Fall of what a unit of each variable leaves a bore of head to flow by, if its discharge counts as head too: head at its
     * wall and some head for each unit that it gives.
     *
     * @param bore the bore, none of those looked for
     * @param perDischarge head by which a unit of its discharge counts (d/m²)
     * @param day the day (d)
     * @return fall of that sum per rate of each variable (d/m²)
     */
    double[] offeredBy(int bore, double perDischarge, double day);

    /**
     * Drawdown at a station on a day by a unit discharge of each bore that has lasted since the start.
     *
     * @param station the station
     * @param day the day (d)
     * @return drawdown per rate of each bore (d/m²)
     */
    double[] bySteady(int station, double day);

    /** Whether something answers the drawdown that the rates cause. */
    boolean isAnswered();
}
