package org.headfall.scenarios.sweep.figures;

import org.headfall.scenarios.results.FinishedRun;

/** A number that is kept of each run. */
public sealed interface KeptFigure permits PlaceFigure, HeadOverTime, WorstFigure, RunFigure, LimitFigure {

    /** Its name, unique in a sweep, such as "loss at Coolabah Spring after 10 yr". */
    String name();

    /** Its unit; empty for a pure number. */
    String unit();

    /** Whether it takes the split of drawdown by cause. */
    default boolean needsInterference() {
        return false;
    }

    /** Whether it takes the volumes of the water balance, which only a simulation has. */
    default boolean needsBalance() {
        return false;
    }

    /**
     * Its value in a run.
     *
     * @param run the run
     * @return the value in its unit; NaN where the run has none, such as the time of a crossing that never comes
     */
    double valueIn(FinishedRun run);

    /** Whether it is read as one of many in a chart, and would only crowd a table. */
    default boolean isOfSeries() {
        return this instanceof HeadOverTime;
    }

    /** Name and unit as the head of a column. */
    default String heading() {
        return unit().isEmpty() ? name() : name() + " (" + unit() + ")";
    }
}
