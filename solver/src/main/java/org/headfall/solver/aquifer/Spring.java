package org.headfall.solver.aquifer;

import org.headfall.solver.wording.PlainNumber;

/**
 * Spring: discharges {@code conductance (head - outlet)} while the head of its cell stands above the outlet, else
 * nothing.
 *
 * @param name unique among bores and springs
 * @param x easting (m)
 * @param y northing (m)
 * @param outlet outlet level (m above datum)
 * @param conductance discharge per metre of head above the outlet (m²/d), positive
 */
public record Spring(String name, double x, double y, double outlet, double conductance) {

    /** Checks the conductance. */
    public Spring {
        if (!(conductance > 0 && Double.isFinite(conductance))) {
            throw new IllegalArgumentException("spring '" + name + "': conductance must be positive, found "
                    + PlainNumber.of(conductance) + " m2/d");
        }
    }
}
