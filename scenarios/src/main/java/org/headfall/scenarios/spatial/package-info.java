/**
 * What every reader of maps shares: a point and the extent of an area in projected metres, and the exception that says where a
 * file is wrong.
 *
 * <p>Nothing here knows a file format. The packages {@code raster}, {@code vector}, {@code reference} and
 * {@code interpolation} stand on this one.
 */
@NullMarked
package org.headfall.scenarios.spatial;

import org.jspecify.annotations.NullMarked;
