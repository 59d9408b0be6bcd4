/** The page of a sweep, {@code sweep.html}: one file that needs no network, the answer first. */
@NullMarked
package org.headfall.scenarios.sweep.page;

import org.jspecify.annotations.NullMarked;
