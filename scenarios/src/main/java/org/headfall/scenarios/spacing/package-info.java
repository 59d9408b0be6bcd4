/**
 * How far apart the bores of a field should stand: what layouts of some bores give, lift and cost over their spacing. The
 * aquifer around the middle of the field stands for the whole: its response to a bore there, by distance.
 */
@NullMarked
package org.headfall.scenarios.spacing;

import org.jspecify.annotations.NullMarked;
