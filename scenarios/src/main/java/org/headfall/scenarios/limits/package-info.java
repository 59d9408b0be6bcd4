/**
 * Limits: what a licence or a plan allows, in its seven parts, and whether a run keeps them.
 *
 * <p>A {@link org.headfall.scenarios.limits.Limit} names a quantity, a place, whose taking causes it, what it is
 * compared with, when it counts, how sure it has to be, and a value; {@link
 * org.headfall.scenarios.limits.LimitEvaluation} gives an {@link org.headfall.scenarios.limits.Outcome}. A limit holds or is crossed, by how much and when; where the margin
 * is smaller than the numerical error of the heads behind it, it stays undecided. Nothing here approves anything.
 */
@NullMarked
package org.headfall.scenarios.limits;

import org.jspecify.annotations.NullMarked;
