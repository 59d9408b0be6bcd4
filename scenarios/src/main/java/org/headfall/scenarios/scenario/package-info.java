/**
 * A scenario as data: everything a user's document and its tables say, checked, in metres and days, with calendar
 * dates.
 *
 * <p>{@link org.headfall.scenarios.scenario.Scenario} is the whole; each part is an immutable record. Alternatives are
 * sealed interfaces: {@link org.headfall.scenarios.scenario.Field} for what varies over the ground,
 * {@link org.headfall.scenarios.scenario.TimeCourse} for what varies with time,
 * {@link org.headfall.scenarios.scenario.BoreOperation} for what a bore does,
 * {@link org.headfall.scenarios.scenario.BoundaryCondition} for what happens at the rim of the grid. Nothing here knows
 * YAML, cells or the solver's arrays. The package {@code reading} makes scenarios from files, the package
 * {@code assembly} makes flow problems from scenarios.
 */
@NullMarked
package org.headfall.scenarios.scenario;

import org.jspecify.annotations.NullMarked;
