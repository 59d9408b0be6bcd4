/**
 * Features on a map: points, lines and polygons with properties, read from and written to GeoJSON (RFC 7946).
 *
 * <p>{@link org.headfall.scenarios.vector.GeoJsonReader} gives a {@link org.headfall.scenarios.vector.FeatureFile} with
 * shapes of the JTS library, each checked to be a proper shape; what is wrong is a {@code SpatialFormatException} with
 * line, column and number of the feature. RFC 7946 knows only longitude and latitude; Headfall reads coordinates of the
 * plane of the scenario, in metres, as every GIS can write them, and
 * {@link org.headfall.scenarios.vector.PlacementCheck} tells degrees and swapped coordinates from those.
 * {@link org.headfall.scenarios.vector.GeoJsonWriter} writes longitude and latitude wherever the reference system of the
 * plane is known.
 */
@NullMarked
package org.headfall.scenarios.vector;

import org.jspecify.annotations.NullMarked;
