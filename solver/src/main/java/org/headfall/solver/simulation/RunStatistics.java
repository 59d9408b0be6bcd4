package org.headfall.solver.simulation;

/**
 * What a run took.
 *
 * @param cells cells of the grid
 * @param steps accepted time steps
 * @param rejectedSteps steps taken again with a shorter length
 * @param linearSolves linear systems solved
 * @param linearIterations iterations of the linear solver in all
 * @param largestStepError largest error estimate of an accepted step (m)
 * @param largestBalanceDiscrepancy largest discrepancy of a step over its throughput (-)
 * @param seconds elapsed time (s)
 */
public record RunStatistics(
        int cells,
        long steps,
        long rejectedSteps,
        long linearSolves,
        long linearIterations,
        double largestStepError,
        double largestBalanceDiscrepancy,
        double seconds) {}
