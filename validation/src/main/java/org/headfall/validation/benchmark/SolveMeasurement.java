package org.headfall.validation.benchmark;

import java.util.Locale;

/**
 * Medians of one case.
 *
 * @param solved the case
 * @param setUpSeconds making a solver from nothing (s)
 * @param refreshSeconds making its multigrid anew for a changed diagonal (s)
 * @param solveSeconds solving all right-hand sides from zero (s)
 * @param iterations most iterations of a right-hand side
 * @param residual largest true relative residual
 * @param bytesPerCell memory of matrix, solver, right-hand sides and answers
 * @param memoryRate bytes moved a second by the triad with as many threads
 * @param figures of the first answer
 */
record SolveMeasurement(
        SolveCase solved,
        double setUpSeconds,
        double refreshSeconds,
        double solveSeconds,
        int iterations,
        double residual,
        double bytesPerCell,
        double memoryRate,
        DrawdownFigures figures) {
    private static final double BYTES_PER_ITERATION = 200;

    /** Solve time over the time that memory takes to move 200 bytes per cell and iteration: comparable between machines. */
    double machineIndependent() {
        double bytes = BYTES_PER_ITERATION * solved.cells() * iterations * solved.rightHandSides();
        return solveSeconds / (bytes / memoryRate);
    }

    double secondsPerSystem() {
        return solveSeconds / solved.rightHandSides();
    }

    String line() {
        String size = solved.rows() == solved.columns() ? "n=" : "rows=" + solved.rows() + " n=";
        return String.format(
                Locale.ROOT,
                "%s%d variant=%s dt=%s threads=%d rhs=%d setup_s=%.4f solve_s=%.4f iterations=%d residual=%.2e"
                        + " bytes_per_cell=%.0f mean=%.11g bores=%.11g max=%.11g refresh_s=%.4f triad_GB_per_s=%.1f"
                        + " over_memory_time=%.2f",
                size,
                solved.columns(),
                solved.variant(),
                solved.step(),
                solved.threads(),
                solved.rightHandSides(),
                setUpSeconds,
                solveSeconds,
                iterations,
                residual,
                bytesPerCell,
                figures.mean(),
                figures.bores(),
                figures.max(),
                refreshSeconds,
                memoryRate / 1e9,
                machineIndependent());
    }
}
