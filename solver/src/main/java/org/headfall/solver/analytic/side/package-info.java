/**
 * Closed-form solutions of aquifers with straight sides, zones or a regional flow: bores beside them by the method of
 * images, what a bore takes from a stream, and how a changing head at a side travels into the aquifer.
 *
 * <p>Sides run along the axes of the plan, the first at {@code x = 0}. Units and signs are those of the parent package.
 */
@NullMarked
package org.headfall.solver.analytic.side;

import org.jspecify.annotations.NullMarked;
