package org.headfall.scenarios.report.content;

import java.time.LocalDate;

/**
 * By how much head at a site may be wrong on a date because it is a number.
 *
 * @param site name of the site
 * @param date the date
 * @param time error left by the time steps (m)
 * @param grid error of the grid (m), NaN if not determined
 * @param solver what the solver may leave (m)
 * @param boundary change of head if the far heads lay farther out (m), NaN if not determined
 * @param together their sum (m)
 */
public record HeadDoubt(
        String site, LocalDate date, double time, double grid, double solver, double boundary, double together) {}
