package org.headfall.scenarios.vector;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.locationtech.jts.geom.Geometry;

/**
 * A shape with properties.
 *
 * @param geometry the shape, in metres of the plane of the scenario; shared, must not be changed
 * @param properties values by name, in the order of the file
 * @param number its number in the file, from 1; 0 if it was not read from a file
 * @param position where it begins in the file
 */
public record Feature(Geometry geometry, Map<String, PropertyValue> properties, int number, TextPosition position) {
    /** Copies the properties. */
    public Feature {
        properties = Collections.unmodifiableMap(new LinkedHashMap<>(properties));
    }

    /**
     * A feature that was not read from a file.
     *
     * @param geometry the shape
     * @param properties values by name, in the order to be written
     */
    public static Feature of(Geometry geometry, Map<String, PropertyValue> properties) {
        return new Feature(geometry, properties, 0, TextPosition.NONE);
    }
}
