/**
 * Symmetric positive definite five-point systems on a rectilinear grid and their solution.
 *
 * <p>This package knows matrices, not aquifers. A {@link org.headfall.solver.linear.FivePointMatrix} holds the couplings
 * between neighbouring cells and a diagonal; the couplings stay, the diagonal may be replaced (another time step adds
 * another storage term). A {@link org.headfall.solver.linear.LinearSolver} is set up once for a matrix, told when the
 * diagonal has changed, and then solves for one or several right-hand sides until a
 * {@link org.headfall.solver.linear.StoppingRule} holds for the residual recomputed from the answer.
 */
@NullMarked
package org.headfall.solver.linear;

import org.jspecify.annotations.NullMarked;
