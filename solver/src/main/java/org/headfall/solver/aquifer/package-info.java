/**
 * What the ground is: transmissivity, storativity, sealing bed, outer boundaries, recharge and springs. Nothing
 * here knows how flow is computed. Metres and days throughout.
 */
@NullMarked
package org.headfall.solver.aquifer;

import org.jspecify.annotations.NullMarked;
