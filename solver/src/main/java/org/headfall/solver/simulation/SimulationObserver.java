package org.headfall.solver.simulation;

/** Is told of recorded days, and of each accepted step, while a simulation runs. */
public interface SimulationObserver {

    /**
     * A day to be recorded has been reached.
     *
     * @param snapshot state of the field; its arrays are valid during the call only
     */
    void recorded(Snapshot snapshot);

    /**
     * A time step has been accepted.
     *
     * @param day day reached
     */
    default void reached(double day) {}
}
