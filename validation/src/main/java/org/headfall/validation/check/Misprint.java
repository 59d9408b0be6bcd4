package org.headfall.validation.check;

/**
 * A wrong number in a published table.
 *
 * @param source where it is printed
 * @param entry which entry of the table
 * @param printed what is printed
 * @param exact the right value
 * @param evidence how we know
 */
public record Misprint(Source source, String entry, String printed, String exact, String evidence) {}
