/**
 * What a grid cannot carry near a bore. Drawdown grows like the logarithm of the distance down to the bore's wall, over
 * a few cells far too steeply for differences between cells. So it is split, {@code s = smooth + sum_j Q_j p_j} with
 * {@code p_j = -ln(r_j) / (2 pi T)}: the grid carries the smooth part alone, the logarithms are known. Written for the
 * whole drawdown again this means no more than two things: a bore takes its water from the cells around it by given
 * weights instead of from one cell ({@link org.headfall.solver.nearfield.NearField}), and head at its wall is what the
 * same weights make of the heads of the cells, less known multiples of the discharges close by
 * ({@link org.headfall.solver.nearfield.UnresolvedDrawdown}). Because the weights are the same both ways, what bore A
 * does at B is what B does at A.
 */
@NullMarked
package org.headfall.solver.nearfield;

import org.jspecify.annotations.NullMarked;
