/**
 * The page of a plan of bores: sites or layouts of a field, as one file that needs no network. {@link
 * org.headfall.scenarios.planning.PlanningPage} says what it shows, a map of cells and curves over spacing among it; those
 * who plan fill it.
 */
@NullMarked
package org.headfall.scenarios.planning;

import org.jspecify.annotations.NullMarked;
