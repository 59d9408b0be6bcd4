/**
 * Two finished runs put side by side: how much lower heads are in the second, where, and what that means for bores and
 * springs. The runs may differ in anything but their reference systems; grids that differ are brought together.
 */
@NullMarked
package org.headfall.scenarios.comparison;

import org.jspecify.annotations.NullMarked;
