/**
 * The page of a plan of bores: sites, layouts or rates of a field, as one file that needs no network. {@link
 * org.headfall.scenarios.planning.PlanningPage} says what it shows, and a {@link
 * org.headfall.scenarios.planning.PlanningView} what it draws: a map of cells, rates on a map and over time, or curves over
 * spacing; those who plan fill it.
 */
@NullMarked
package org.headfall.scenarios.planning;

import org.jspecify.annotations.NullMarked;
