/**
 * The commands of {@code headfall}. {@link org.headfall.cli.Headfall} puts them together and is where the process
 * begins; each {@code ...Command} reads its options, calls the module {@code scenarios} and answers an
 * {@link org.headfall.cli.ExitCode}. {@link org.headfall.cli.Failures} turns what was thrown into messages: problems
 * of the input one a line, anything else a short note and a crash report, never a stack trace. Answers go to standard
 * output, everything else to standard error.
 */
@NullMarked
package org.headfall.cli;

import org.jspecify.annotations.NullMarked;
