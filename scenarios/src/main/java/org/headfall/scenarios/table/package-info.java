/**
 * Tables in CSV files: bores, schedules, measurements.
 *
 * <p>A table is UTF-8 text (with or without a byte order mark) with one header row, values separated by commas, a point
 * before decimals, dates as year-month-day and lines that begin with {@code #} left out. The unit of a quantity stands
 * in the header, {@code rate (L/s)}, or in each cell, {@code 25 L/s}. Column names may be typed with spaces for
 * underscores and in any case. Rows are read one at a time, so that a long file needs no more memory than a short one;
 * every problem is reported with line and column.
 */
@NullMarked
package org.headfall.scenarios.table;

import org.jspecify.annotations.NullMarked;
