package org.headfall.scenarios.recording;

import java.io.IOException;
import org.headfall.solver.flow.WaterBalance;

/** Is handed each record as it comes: a file, or a listener. Arrays are valid during the call only. */
public interface RecordSink {

    /**
     * Values of the stations at a recorded day.
     *
     * @param values the values
     * @throws IOException if they cannot be written
     */
    default void stations(StationValues values) throws IOException {}

    /**
     * Heads of the grid at a day for which grids are wanted.
     *
     * @param day days since the start
     * @param head head of each cell (m above datum)
     * @param balance water that passed since the previous gridded record
     * @param notConfinedSince first recorded day with head below the aquifer top of each cell, NaN if never
     * @throws IOException if they cannot be written
     */
    default void grid(double day, double[] head, WaterBalance balance, double[] notConfinedSince) throws IOException {}
}
