/**
 * Progress of long work: one line that is rewritten on a terminal, a plain line now and then in a log, or nothing. All
 * of it goes to the standard error stream, so that standard output carries answers only.
 */
@NullMarked
package org.headfall.cli.progress;

import org.jspecify.annotations.NullMarked;
