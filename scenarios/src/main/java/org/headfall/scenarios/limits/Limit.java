package org.headfall.scenarios.limits;

/**
 * A limit as the user wrote it.
 *
 * @param name its name
 * @param quantity what is limited, and the value
 * @param station name of the bore, spring or protected point
 * @param comparison with what it is compared; not used by a floor level
 * @param period when it counts
 * @param text the clause as the licence words it, empty if not given
 */
public record Limit(
        String name, LimitedQuantity quantity, String station, Comparison comparison, LimitPeriod period, String text) {
    /** Whether judging it takes the run without some bores, beside the run itself. */
    public boolean needsOtherRun() {
        return !(comparison instanceof Comparison.Start) && !(quantity instanceof LimitedQuantity.FloorLevel);
    }
}
