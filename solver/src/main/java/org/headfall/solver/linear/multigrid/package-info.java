/**
 * Multigrid on a rectilinear grid for hard coefficients: lines along y are solved exactly, every second column is left
 * out on the next level, and the interpolation to a column left out follows the matrix. Lines take care of strong
 * coupling along y, coarsening across them of strong coupling along x, so that no kind of anisotropy is left over.
 */
@NullMarked
package org.headfall.solver.linear.multigrid;

import org.jspecify.annotations.NullMarked;
