package org.headfall.scenarios.scenario;

import java.util.List;
import org.headfall.scenarios.scenario.BoreSpecification.WellLossSpecification;
import org.headfall.scenarios.spatial.Position;

/**
 * How far apart the bores of a field should stand.
 *
 * @param at middle of the field
 * @param layouts layouts to compare
 * @param counts numbers of bores to compare
 * @param from shortest spacing (m)
 * @param to longest spacing (m)
 * @param steps number of spacings, evenly spaced in the logarithm, at least two
 * @param rate total rate that lifts are given for (m3/d)
 * @param lift lift that total rates are given for (m)
 * @param days how long the field takes from the start of the period on (d)
 * @param screenRadius radius at the face of the screens (m)
 * @param wellLoss loss between aquifer and bore
 * @param deliveryHead head above the ground that water is lifted to (m)
 * @param efficiency part of the energy that lifts water (-), from more than 0 to 1
 * @param prices what things cost
 */
public record SpacingSpecification(
        Position at,
        List<Layout> layouts,
        List<Integer> counts,
        double from,
        double to,
        int steps,
        double rate,
        double lift,
        double days,
        double screenRadius,
        WellLossSpecification wellLoss,
        double deliveryHead,
        double efficiency,
        Prices prices) {

    /** Copies the lists. */
    public SpacingSpecification {
        layouts = List.copyOf(layouts);
        counts = List.copyOf(counts);
    }

    /** How bores stand. */
    public enum Layout {
        /** On a straight line. */
        LINE,
        /** On a square lattice, row by row. */
        GRID,
        /** On a lattice of equilateral triangles, as near to the middle as they can. */
        HEXAGON,
        /** On a circle. */
        RING
    }

    /**
     * Prices, in one currency.
     *
     * @param energy of a kWh
     * @param pipe of a metre of pipe, laid
     * @param bore of a bore, drilled and equipped
     * @param years after which pipes and bores are paid for (yr)
     * @param interest interest (-) a year
     */
    public record Prices(double energy, double pipe, double bore, double years, double interest) {

        /** Yearly share of what pipes and bores cost: the annuity of a loan. */
        public double yearlyShare() {
            return interest == 0 ? 1 / years : interest / -Math.expm1(-years * Math.log1p(interest));
        }
    }
}
