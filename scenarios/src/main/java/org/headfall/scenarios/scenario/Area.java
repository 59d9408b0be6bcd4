package org.headfall.scenarios.scenario;

import java.util.List;
import org.locationtech.jts.geom.Geometry;

/**
 * A part of the map, bounded by polygons.
 *
 * @param file the GeoJSON file with the polygons
 * @param polygons the polygons (m), at least one; shared, must not be changed
 */
public record Area(SpatialFile file, List<Geometry> polygons) {
    /** Copies the list. */
    public Area {
        polygons = List.copyOf(polygons);
    }
}
