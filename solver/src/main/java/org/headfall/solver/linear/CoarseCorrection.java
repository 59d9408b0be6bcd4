package org.headfall.solver.linear;

/** Approximate solution on a coarser grid, in single precision. */
interface CoarseCorrection {
    /** Makes room for a number of systems. */
    void reserve(int systems);

    /** Returns the vector that takes a system's right-hand side. */
    HalfRows rightHandSide(int system);

    /** Returns the vector that holds a system's solution after {@link #run}. */
    HalfRows solution(int system);

    /** Solves for the first systems. */
    void run(int systems);
}
