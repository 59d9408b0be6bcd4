/**
 * By how much the heads of a run may be wrong because they are numbers: the error budget of every bore, spring and
 * protected point, and the changed problems that a run is repeated with to find it.
 *
 * <p>{@link org.headfall.scenarios.doubts.CoarserProblem} is the same problem on cells twice as wide;
 * {@link org.headfall.scenarios.doubts.FartherBoundary} the same problem with its far heads farther out. What the data
 * leave open is not in the budget.
 */
@NullMarked
package org.headfall.scenarios.doubts;

import org.jspecify.annotations.NullMarked;
