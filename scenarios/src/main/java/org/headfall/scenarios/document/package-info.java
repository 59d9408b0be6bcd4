/**
 * A YAML document as a tree whose every part knows its file, line and column, and the tools to read it.
 *
 * <p>{@link org.headfall.scenarios.document.DocumentParser} turns a file into
 * {@link org.headfall.scenarios.document.DocumentNode}s within safe limits: 20 MB, 20 levels, a million values, no
 * anchors, aliases or tags. {@link org.headfall.scenarios.document.Section} reads the keys of one mapping, each with
 * its type, unit and range, and reports what is missing, wrong or not known.
 * {@link org.headfall.scenarios.document.ScenarioFolder} finds the files a document names and keeps their hashes.
 * Nothing here throws for bad input: every problem goes to
 * {@link org.headfall.scenarios.problem.Problems} and reading goes on.
 */
@NullMarked
package org.headfall.scenarios.document;

import org.jspecify.annotations.NullMarked;
