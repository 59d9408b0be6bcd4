/**
 * In which coordinate reference system x and y are given.
 *
 * <p>A scenario either has plain metres on a local grid, or names a projected system by its EPSG code. The system
 * gives longitude and latitude of a place, and describes itself to other programs in three ways: the code, the
 * attributes of a CF grid mapping, and well-known text (WKT 1, OGC 01-009). Definitions come from proj4j's copy of the
 * EPSG dataset; systems in degrees, in feet, with axes to the south or west, or of a projection that we cannot
 * describe are refused, since distances and areas of the model are taken from the coordinates as they are.
 */
@NullMarked
package org.headfall.scenarios.reference;

import org.jspecify.annotations.NullMarked;
