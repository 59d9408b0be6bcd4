/**
 * The special functions of bore hydraulics: the well functions of the classical solutions, the modified Bessel functions
 * and repeated error integrals they rest on, and the numerical inversion of Laplace transforms.
 *
 * <p>Every function here is dimensionless and accurate to at least ten digits; the solutions of the parent package give
 * the arguments their physical meaning. All methods are pure and safe to call from many threads.
 */
@NullMarked
package org.headfall.solver.analytic.function;

import org.jspecify.annotations.NullMarked;
