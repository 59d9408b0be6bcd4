package org.headfall.solver.linear;

import java.util.List;

/**
 * Approximate inverse of a matrix: fixed, linear, symmetric and positive definite, as conjugate gradients need it.
 *
 * @param <S> in what form it takes residuals and gives corrections
 */
interface Preconditioner<S extends KrylovSystem> {
    /** Takes the matrix's new diagonal into account. */
    void diagonalChanged();

    /** Makes ready for solves with the matrix's present diagonal. */
    void prepare();

    /** Makes the vectors of one more right-hand side, for rows that are worked on in a number of parts at once. */
    S newSystem(int parts);

    /**
     * Computes the corrections {@code M r} of the first systems from their residuals, and in {@code rowSums} each row's
     * part of the inner product of the two; no value depends on another system's.
     */
    void apply(List<S> systems, int count);
}
