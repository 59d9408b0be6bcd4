/**
 * What follows from linearity: confined flow between given heads is linear in the discharges, so drawdown
 * anywhere is the sum, over all bores and springs, of their discharges convolved with unit step responses. The
 * rules of bores and springs are not linear, but their discharges, once known from a run, are causes like any
 * other: the split of drawdown by cause is exact whatever the rules.
 */
@NullMarked
package org.headfall.solver.response;

import org.jspecify.annotations.NullMarked;
