/**
 * Symmetric positive definite five-point systems on a rectilinear grid and their solution.
 */
@NullMarked
package org.headfall.solver.linear;

import org.jspecify.annotations.NullMarked;
