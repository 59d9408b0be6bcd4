/**
 * What many runs say together, as plain mathematics on arrays: probabilities with their sampling error, rank correlation,
 * Sobol indices, the best compromises between aims.
 */
@NullMarked
package org.headfall.scenarios.sweep.statistics;

import org.jspecify.annotations.NullMarked;
