package org.headfall.scenarios.recording;

import java.util.Map;
import org.headfall.scenarios.reference.CoordinateReference;

/**
 * The coordinate reference system in which x and y are given.
 *
 * @param system the system
 */
public record MapReference(CoordinateReference system) {

    /** Authority and number, such as "EPSG:7854". */
    public String code() {
        return system.codeText();
    }

    /**
     * Attributes of a CF grid mapping variable.
     *
     * @return grid_mapping_name, its parameters and the system as WKT 1; texts, numbers or {@code double[]}
     */
    public Map<String, Object> gridMapping() {
        return system.gridMapping();
    }
}
