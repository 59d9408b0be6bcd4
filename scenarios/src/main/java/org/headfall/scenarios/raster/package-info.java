/**
 * A map of one quantity on a rectangular lattice of cells: reading it, asking it for values on the cells of a model
 * grid, and writing it so that a GIS shows it in the right place.
 *
 * <p>Whatever the file, a {@link org.headfall.scenarios.raster.Raster} is the same thing: cell edges ascending along
 * x and y in metres, values row by row from south to north and from west to east within a row, NaN where there is no
 * data. A value belongs to the whole cell and is taken as the value at its centre. {@code RasterReader} tells the
 * format by the first bytes of the file, not by its name. Values keep the unit of the file; where the file states
 * one it is handed on as text, to be converted by whoever knows which quantity is meant.
 */
@NullMarked
package org.headfall.scenarios.raster;

import org.jspecify.annotations.NullMarked;
