/**
 * Random fields: what may lie between the places where something has been measured. Values are lognormal, alike
 * everywhere in median and spread, and the more alike the nearer two places are, as a {@link
 * org.headfall.scenarios.randomfield.Covariance} says.
 *
 * <p>{@link org.headfall.scenarios.randomfield.CirculantEmbedding} draws fields on an even {@link
 * org.headfall.scenarios.randomfield.Lattice} by Fourier transforms; {@link
 * org.headfall.scenarios.randomfield.LognormalField} bends them so that they keep the values that are known. A field
 * follows from its seed and number alone: the same on any number of threads and on every computer.
 */
@NullMarked
package org.headfall.scenarios.randomfield;

import org.jspecify.annotations.NullMarked;
