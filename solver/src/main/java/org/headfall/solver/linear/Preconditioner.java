package org.headfall.solver.linear;

/**
 * Approximate inverse of a matrix: fixed, linear, symmetric and positive definite, as conjugate gradients need it.
 */
public interface Preconditioner {
    /** Takes the matrix's new diagonal into account. */
    void diagonalChanged();

    /**
     * Computes {@code corrections[l] = M residuals[l]} for l from 0 to {@code count - 1}; no value depends on another
     * system's.
     *
     * @param residuals one array of cells a system, not modified
     * @param norms 2-norm of each residual, for scaling
     * @param corrections receive the results
     * @param rowProducts receive, a value a row of the grid, the row's part of the inner product of a system's residual
     *     and correction
     * @param count number of systems
     */
    void apply(double[][] residuals, double[] norms, double[][] corrections, double[][] rowProducts, int count);
}
