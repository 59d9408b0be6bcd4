package org.headfall.solver.linear;

/** Approximate solution on a coarser grid, in vectors padded as in {@link NinePointOperator}. */
interface CoarseCorrection {
    /** Makes room for a number of systems. */
    void reserve(int systems);

    /** Returns the array that takes a system's right-hand side. */
    float[] rightHandSide(int system);

    /** Returns the array that holds a system's solution after {@link #run}. */
    float[] solution(int system);

    /** Solves for the first systems. */
    void run(int systems);
}
