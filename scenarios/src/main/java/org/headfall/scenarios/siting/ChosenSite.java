package org.headfall.scenarios.siting;

import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.response.EffectFields;

/**
 * A site whose effects have been solved for.
 *
 * @param cell its cell
 * @param rate rate of its bore (m³/d)
 * @param largest largest rate that the site allows (m³/d)
 * @param ruling what decides that, see {@link Ruling}
 * @param bore near field of its bore
 * @param field drawdown of all cells by it
 */
record ChosenSite(int cell, double rate, double largest, int ruling, NearField bore, EffectFields field) {

    /** Drawdown at the wall of the bore by its own unit discharge after a time (d/m²). */
    double own(double time) {
        return field.own(0, time) + bore.unresolvedAtWall();
    }

    /** The same site with other rates. */
    ChosenSite with(double otherRate, double otherLargest, int otherRuling) {
        return new ChosenSite(cell, otherRate, otherLargest, otherRuling, bore, field);
    }
}
