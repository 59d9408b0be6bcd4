package org.headfall.scenarios.assembly;

import org.headfall.scenarios.interpolation.SpreadValues;

/**
 * How values at points became values on cells, for the record of a run.
 *
 * @param key the key in the document, such as {@code aquifer.transmissivity.points}
 * @param file name of the table of points
 * @param points number of points
 * @param method how they were spread, with the variogram if they were kriged
 */
public record SpreadField(String key, String file, int points, SpreadValues.Method method) {}
