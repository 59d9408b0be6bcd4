/**
 * The discrete flow equation of a confined aquifer in the horizontal plane, {@code S dh/dt = div(T grad h) +
 * recharge - leakage - springs - bores}, by cell-centred finite volumes: its matrix, the rules of bores and
 * springs solved together with it, and its water balance.
 */
@NullMarked
package org.headfall.solver.flow;

import org.jspecify.annotations.NullMarked;
