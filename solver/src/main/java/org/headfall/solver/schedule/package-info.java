/**
 * Quantities that change with time: constant, in steps, or along straight lines between given days. Time is in
 * days since the start of the simulated period.
 */
@NullMarked
package org.headfall.solver.schedule;

import org.jspecify.annotations.NullMarked;
