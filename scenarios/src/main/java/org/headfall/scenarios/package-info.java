/**
 * What a user writes and gets: scenario documents, field data, results and reports.
 */
@NullMarked
package org.headfall.scenarios;

import org.jspecify.annotations.NullMarked;
