/**
 * Bores: where they stand, what they lose between aquifer and pump, and the rule by which they are operated. A
 * rule states the head that the aquifer must offer at the bore wall for a given discharge; the flow equation
 * solves all rules together with the aquifer.
 */
@NullMarked
package org.headfall.solver.bore;

import org.jspecify.annotations.NullMarked;
