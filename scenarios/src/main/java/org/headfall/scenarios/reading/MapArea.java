package org.headfall.scenarios.reading;

import org.headfall.scenarios.scenario.Area;
import org.headfall.scenarios.scenario.CoordinateSystem;
import org.headfall.scenarios.spatial.Extent;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * What maps of a scenario have to fit.
 *
 * @param grid the extent of the grid; null if the grid itself is at fault
 * @param needed the part of it that rasters have to cover; null if the grid is at fault
 * @param holesAllowed whether they may have holes, because the aquifer does not fill the grid; holes within the aquifer
 *     come to light when values are put on cells
 * @param coordinates the coordinate reference system of the scenario; null if it is at fault
 */
record MapArea(
        @Nullable Extent grid,
        @Nullable Extent needed,
        boolean holesAllowed,
        @Nullable CoordinateSystem coordinates) {
    /** Maps that have to fit the whole grid. */
    static MapArea ofGrid(@Nullable Extent grid, @Nullable CoordinateSystem coordinates) {
        return new MapArea(grid, grid, false, coordinates);
    }

    /** Maps of an aquifer that takes up a part of the grid. */
    MapArea within(Area aquifer) {
        return new MapArea(grid, grid == null ? null : part(grid, aquifer), true, coordinates);
    }

    /** The rectangle around the aquifer within the grid; all of the grid if they do not meet, which is reported. */
    private static Extent part(Extent grid, Area aquifer) {
        Envelope bounds = new Envelope();
        for (Geometry polygon : aquifer.polygons()) {
            bounds.expandToInclude(polygon.getEnvelopeInternal());
        }
        Envelope part = bounds.intersection(new Envelope(grid.west(), grid.east(), grid.south(), grid.north()));
        return part.getArea() > 0 ? new Extent(part.getMinX(), part.getMinY(), part.getMaxX(), part.getMaxY()) : grid;
    }
}
