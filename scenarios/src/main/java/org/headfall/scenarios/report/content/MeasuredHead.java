package org.headfall.scenarios.report.content;

import java.time.LocalDate;

/**
 * A measured head beside the computed one.
 *
 * @param site name of the site
 * @param date when it was measured
 * @param read what was read off, in words
 * @param measured head that follows from it (m above datum)
 * @param computed head of the run on that day (m above datum)
 */
public record MeasuredHead(String site, LocalDate date, String read, double measured, double computed) {}
