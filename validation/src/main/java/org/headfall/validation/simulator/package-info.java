/**
 * The simulator, on a grid and at its default accuracy, against closed forms. The bore stands at the centre of its cell
 * and at random places in it, from a seed that is printed.
 */
@NullMarked
package org.headfall.validation.simulator;

import org.jspecify.annotations.NullMarked;
