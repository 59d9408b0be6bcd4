/**
 * The report people look at: one html file that opens without a network. The content is plain data
 * ({@code report.content}); the page ({@code report.page}) turns it into sentences, tables and figures.
 */
@NullMarked
package org.headfall.scenarios.report;

import org.jspecify.annotations.NullMarked;
