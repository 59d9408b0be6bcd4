/**
 * A linear system of known difficulty with reference answers, and the program that times the solver on it.
 *
 * <p>The system is one implicit step, or the steady state, of confined flow on a square grid of n x n cells with a
 * log-normal transmissivity made of 128 plane waves; variants change one thing each to break weak preconditioners.
 */
@NullMarked
package org.headfall.validation.benchmark;

import org.jspecify.annotations.NullMarked;
