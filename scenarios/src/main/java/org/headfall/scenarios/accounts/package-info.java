/**
 * Water accounts: what is taken in each water year against what may be taken, by bore, holder and zone.
 *
 * <p>What is taken comes from the discharges of a run, and beside it, where there are readings, from meters. An
 * entitlement is a volume of a year and says nothing about whether the aquifer gives it.
 */
@NullMarked
package org.headfall.scenarios.accounts;

import org.jspecify.annotations.NullMarked;
