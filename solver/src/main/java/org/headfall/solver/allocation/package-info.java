/**
 * Best shares of something under linear bounds: linear and convex quadratic programmes, what each bound costs, and by how
 * little bounds that contradict each other must give way. It knows no aquifers; rates become variables and limits rows
 * elsewhere. Solved by ojAlgo.
 */
@NullMarked
package org.headfall.solver.allocation;

import org.jspecify.annotations.NullMarked;
