package org.headfall.scenarios.recording;

import java.util.Map;
import org.headfall.scenarios.reference.CoordinateReference;

/**
 * The coordinate reference system in which x and y are given.
 *
 * @param code authority and number, such as "EPSG:7854"
 * @param gridMapping attributes of a CF grid mapping variable: grid_mapping_name, its parameters and the system as
 *     WKT 1; texts, numbers or {@code double[]}
 */
public record MapReference(String code, Map<String, Object> gridMapping) {

    /** Copies the attributes. */
    public MapReference {
        gridMapping = Map.copyOf(gridMapping);
    }

    /** The reference of a coordinate reference system. */
    public static MapReference of(CoordinateReference reference) {
        return new MapReference(reference.codeText(), reference.gridMapping());
    }
}
