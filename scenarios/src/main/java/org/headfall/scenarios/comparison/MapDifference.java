package org.headfall.scenarios.comparison;

import java.time.LocalDate;

/**
 * Heads of both runs on a date, on the cells of the first.
 *
 * @param date the date
 * @param day the same in days since the start of the first run
 * @param lowerBy how much lower head is in the second run (m) in each cell, NaN where either has no aquifer; not copied,
 *     must not change
 */
@SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, shared and never compared
public record MapDifference(LocalDate date, double day, double[] lowerBy) {}
