package org.headfall.solver.flow;

import java.util.List;

/**
 * Water that passed over a time, by term. What enters the aquifer's flow counts as inflow, also water that the aquifer
 * or the sealing bed releases from storage.
 *
 * @param fromDay start of the time (d)
 * @param toDay end of the time (d)
 * @param terms storage first, then sealing bed, boundaries, recharge, springs, bores
 * @param largestStepDiscrepancy largest of {@code |in - out| / throughput} of the single time steps (-)
 */
public record WaterBalance(double fromDay, double toDay, List<Term> terms, double largestStepDiscrepancy) {

    /** Water below which nothing counts as having passed (m³), a cubic centimetre: in an aquifer at rest there is rounding. */
    static final double LEAST_THROUGHPUT = 1e-6;

    /** What kind of water a term counts. */
    public enum Kind {
        /** Released from, or taken into, storage of the aquifer. */
        STORAGE,
        /** Released from, or taken into, storage of the sealing bed. */
        SEALING_BED_STORAGE,
        /** Through the sealing bed, from or to the level above. */
        LEAKAGE,
        /** Through an outer boundary. */
        BOUNDARY,
        /** Rain on the outcrop. */
        RECHARGE,
        /** Discharge of a spring. */
        SPRING,
        /** Taken by a bore. */
        BORE
    }

    /**
     * One term.
     *
     * @param name name of the boundary, recharge, spring or bore; "storage", "leakage" for the others
     * @param kind what it counts
     * @param inflow volume into the aquifer (m³), not negative
     * @param outflow volume out of the aquifer (m³), not negative
     */
    public record Term(String name, Kind kind, double inflow, double outflow) {}

    /** Copies the terms. */
    public WaterBalance {
        terms = List.copyOf(terms);
    }

    /** Total inflow (m³). */
    public double inflow() {
        return terms.stream().mapToDouble(Term::inflow).sum();
    }

    /** Total outflow (m³). */
    public double outflow() {
        return terms.stream().mapToDouble(Term::outflow).sum();
    }

    /** Inflow less outflow (m³): what the numbers fail to account for. */
    public double discrepancy() {
        return inflow() - outflow();
    }

    /** Discrepancy over the larger of inflow and outflow (-), zero where nothing flows: less than a cubic centimetre. */
    public double relativeDiscrepancy() {
        double throughput = Math.max(inflow(), outflow());
        return throughput > LEAST_THROUGHPUT ? Math.abs(discrepancy()) / throughput : 0;
    }
}
