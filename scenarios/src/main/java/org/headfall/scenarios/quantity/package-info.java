/**
 * Numbers with units, as people type them: {@code 25 L/s}, {@code 350 m2/d}, {@code 0.8 ML/d}, {@code 50 yr}.
 *
 * <p>The table of units is closed and case-sensitive ({@link org.headfall.scenarios.quantity.UnitTable}): what is not
 * in it is refused with the nearest unit that is, never guessed. Units combine by product and power ({@code m3/d},
 * {@code m3 d-1}, {@code m^3.d^-1}, {@code m³ d⁻¹}). Every conversion factor is an exact fraction, so that a converted
 * value is the double nearest to the true one. A quantity is read for a
 * {@link org.headfall.scenarios.quantity.Dimension}, which decides which units may stand there, and holds its value in
 * metres and days, the only units used beyond this package.
 *
 * <p>One year (yr) is 365.25 days, the Julian year.
 */
@NullMarked
package org.headfall.scenarios.quantity;

import org.jspecify.annotations.NullMarked;
