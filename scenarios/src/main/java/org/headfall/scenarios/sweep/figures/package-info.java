/**
 * Single numbers that a sweep keeps of each run: a figure of the reports at a place and a time, or the margin and the
 * first crossing of a limit.
 */
@NullMarked
package org.headfall.scenarios.sweep.figures;

import org.jspecify.annotations.NullMarked;
