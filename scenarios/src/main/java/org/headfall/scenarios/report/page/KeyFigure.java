package org.headfall.scenarios.report.page;

/**
 * One of the few numbers that matter.
 *
 * @param value the number with its unit
 * @param meaning what it is, in a few words
 * @param detail where and when, with the error
 * @param tone how it is marked
 */
public record KeyFigure(Sentence value, String meaning, Sentence detail, Cell.Tone tone) {}
