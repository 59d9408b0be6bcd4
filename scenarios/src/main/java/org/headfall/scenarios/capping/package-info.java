/**
 * Which of the bores that flow by themselves to shut first: what each gives back to springs and neighbours for the water
 * that is saved.
 */
@NullMarked
package org.headfall.scenarios.capping;

import org.jspecify.annotations.NullMarked;
