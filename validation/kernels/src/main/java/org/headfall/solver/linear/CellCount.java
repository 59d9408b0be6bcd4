package org.headfall.solver.linear;

import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Counts what a benchmark has worked on, so that its time is also given per cell (of each system, in each iteration). */
@AuxCounters(AuxCounters.Type.OPERATIONS)
@State(Scope.Thread)
public class CellCount {
    /** Cells times systems times iterations; JMH prints the time per one of them under this name. */
    public long perCell;

    /** Begins to count. */
    @Setup(Level.Iteration)
    public void begin() {
        perCell = 0;
    }
}
