package org.headfall.scenarios.report.content;

import java.time.LocalDate;

/**
 * What was asked and in which terms the answer is given.
 *
 * @param title title of the scenario
 * @param question what the user wanted to know, blank if the scenario does not say
 * @param datum the level that heads are measured above, as the scenario words it
 * @param coordinateSystem name of the coordinate system, blank for local coordinates
 * @param start first day of the period
 * @param end last day of the period
 */
public record Heading(
        String title, String question, String datum, String coordinateSystem, LocalDate start, LocalDate end) {}
