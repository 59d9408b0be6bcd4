/**
 * Closed-form solutions of flow to bores in a confined aquifer: the drawdown, the discharge or the depletion they cause as
 * published, for pumping tests and to hold the numerical solver to.
 *
 * <p>Every solution is an immutable value of its aquifer properties; its methods take what changes from use to use.
 * Lengths are in metres, times in days since pumping began, rates in m³/d (positive taken out), transmissivity in m²/d.
 * Drawdown is in metres, positive downwards. Arguments out of range raise an {@link java.lang.IllegalArgumentException}
 * that names the argument and its value.
 */
@NullMarked
package org.headfall.solver.analytic;

import org.jspecify.annotations.NullMarked;
