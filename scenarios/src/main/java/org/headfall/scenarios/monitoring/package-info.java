/**
 * What to watch: for each limit that will be crossed, the last day on which stopping its cause still prevents that, and the
 * heads that monitoring bores show then.
 */
@NullMarked
package org.headfall.scenarios.monitoring;

import org.jspecify.annotations.NullMarked;
