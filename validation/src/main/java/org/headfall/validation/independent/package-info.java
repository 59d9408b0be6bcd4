/**
 * The discrete equations solved again by a general-purpose library outside the project, and the rates at which answers
 * converge when cells and steps shrink.
 */
@NullMarked
package org.headfall.validation.independent;

import org.jspecify.annotations.NullMarked;
