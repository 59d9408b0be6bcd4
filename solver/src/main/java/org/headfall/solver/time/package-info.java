/**
 * Adaptive implicit time stepping for stiff systems {@code M dy/dt = f(t, y)}. The mathematics does not know
 * what flows: it sees {@code double[]} and a system that can solve one implicit stage.
 */
@NullMarked
package org.headfall.solver.time;

import org.jspecify.annotations.NullMarked;
