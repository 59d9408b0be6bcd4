package org.headfall.scenarios.report.content;

import java.time.LocalDate;

/**
 * Values of all cells at a date.
 *
 * @param date the date
 * @param values one value a cell (m), west to east within rows, rows from south to north; NaN where there is no aquifer
 */
@SuppressWarnings("ArrayRecordComponent") // large, owned by the content
public record DatedField(LocalDate date, float[] values) {}
