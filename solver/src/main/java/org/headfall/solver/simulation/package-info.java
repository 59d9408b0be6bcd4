/**
 * A run: from a flow problem and a start to recorded heads, levels, discharges and water balances.
 */
@NullMarked
package org.headfall.solver.simulation;

import org.jspecify.annotations.NullMarked;
