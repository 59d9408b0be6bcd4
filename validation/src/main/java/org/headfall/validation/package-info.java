/**
 * Published solutions and tables against the solver, and benchmarks.
 */
@NullMarked
package org.headfall.validation;

import org.jspecify.annotations.NullMarked;
