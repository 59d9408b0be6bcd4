/**
 * Values on the cells of a rectilinear grid from values at points and in polygons.
 *
 * <p>{@link org.headfall.scenarios.interpolation.PointSpread} spreads values at points, such as transmissivities from
 * pumping tests: by ordinary kriging, by inverse distances or from the nearest point, of the values themselves or of
 * their logarithms. {@link org.headfall.scenarios.interpolation.PolygonCells} gives cells the value of the polygon their
 * centre lies in, or the part of each cell that polygons cover. Values are those at cell centres; on cells much shorter
 * than the distances between points this is also the mean of the cell.
 */
@NullMarked
package org.headfall.scenarios.interpolation;

import org.jspecify.annotations.NullMarked;
