package org.headfall.scenarios.scenario;

import java.nio.file.Path;
import org.headfall.scenarios.problem.Place;

/**
 * A raster, a GeoJSON file or a table of points that the document names.
 *
 * @param path the file, which exists
 * @param name its name relative to the folder of the document
 * @param place where the document names it
 * @param key the key in the document, such as {@code aquifer.top}
 */
public record SpatialFile(Path path, String name, Place place, String key) {}
