package org.headfall.scenarios.reading;

import org.headfall.scenarios.scenario.CoordinateSystem;
import org.headfall.scenarios.spatial.Extent;
import org.jspecify.annotations.Nullable;

/**
 * What maps of a scenario have to fit.
 *
 * @param needed the area they have to cover; null if the grid itself is at fault
 * @param holesAllowed whether they may have holes, because the aquifer does not fill the grid; holes within the aquifer
 *     come to light when values are put on cells
 * @param coordinates the coordinate reference system of the scenario; null if it is at fault
 */
record MapArea(
        @Nullable Extent needed,
        boolean holesAllowed,
        @Nullable CoordinateSystem coordinates) {}
