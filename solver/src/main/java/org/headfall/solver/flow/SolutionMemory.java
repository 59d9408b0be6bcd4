package org.headfall.solver.flow;

import java.nio.FloatBuffer;

/** Where solutions of all cells are kept: they may take more than the heap has left. */
@FunctionalInterface
public interface SolutionMemory {

    /**
     * Keeps numbers.
     *
     * @param values the numbers, not changed afterwards by anyone
     * @return the same numbers, from index 0 on, to be read by several threads by absolute index alone
     */
    FloatBuffer keep(float[] values);

    /** The heap. */
    static SolutionMemory heap() {
        return FloatBuffer::wrap;
    }
}
