/**
 * The two reports the tool exists for, and where the aquifer stopped being confined, computed from a recording.
 *
 * <ul>
 *   <li>{@link org.headfall.scenarios.findings.ArtesianHead}: what a bore, spring or protected point loses, per report
 *       date, and when it stops flowing by itself.
 *   <li>{@link org.headfall.scenarios.findings.InterferenceTable}: who causes which part of the drawdown at whom, and
 *       what that costs the field in lift or yield.
 *   <li>{@link org.headfall.scenarios.findings.Confinement}: where and since when head lies below the aquifer top, so
 *       that transmissivity and storativity of a confined aquifer no longer hold.
 * </ul>
 *
 * <p>Metres, days, m³/d; a rate of decline is in metres a year of 365.25 days. Values that do not exist are absent.
 */
@NullMarked
package org.headfall.scenarios.findings;

import org.jspecify.annotations.NullMarked;
