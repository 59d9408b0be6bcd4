/**
 * How bores are to share the water: rates of some bores, alike for each season and some years, that keep every limit of
 * the document at every date. Drawdown is linear in the rates ({@link org.headfall.solver.response.UnitResponses}), so
 * this is a linear or quadratic programme ({@link org.headfall.solver.allocation.Programme}); its rates are run through
 * the simulator, and what rules and springs make different is counted in a next round.
 */
@NullMarked
package org.headfall.scenarios.allocation;

import org.jspecify.annotations.NullMarked;
