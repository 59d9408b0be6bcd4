/** What a sweep leaves for people: its table as CSV, the answers to what was asked, and single runs as scenarios again. */
@NullMarked
package org.headfall.scenarios.sweep.results;

import org.jspecify.annotations.NullMarked;
