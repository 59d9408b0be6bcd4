/**
 * Rectilinear grid of cells with free spacing. Cells are counted from the south-west corner, east first: {@code
 * cell = row * columns + column}. Fields on the grid are flat arrays in that order. Lengths are in metres.
 */
@NullMarked
package org.headfall.solver.grid;

import org.jspecify.annotations.NullMarked;
