package org.headfall.scenarios.evidence;

/**
 * Something that makes a figure of the report less sure.
 *
 * @param subject the site, cell or limit concerned, blank if it is the whole field
 * @param statement what is doubtful, since when and which figures it touches
 */
public record Doubt(String subject, String statement) {}
