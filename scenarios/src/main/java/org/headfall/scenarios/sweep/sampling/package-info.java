/**
 * Which values the runs of a sweep get. A {@link org.headfall.scenarios.sweep.sampling.Sampling} puts points into the
 * unit cube, evenly by a Latin hypercube or a Sobol sequence; a {@link
 * org.headfall.scenarios.sweep.sampling.Distribution} turns one coordinate into a value; {@link
 * org.headfall.scenarios.sweep.sampling.RankCorrelations} makes coordinates depend on each other.
 *
 * <p>The same seed gives the same points on every machine.
 */
@NullMarked
package org.headfall.scenarios.sweep.sampling;

import org.jspecify.annotations.NullMarked;
