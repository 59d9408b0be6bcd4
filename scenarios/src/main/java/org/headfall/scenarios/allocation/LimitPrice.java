package org.headfall.scenarios.allocation;

import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/**
 * What a limit costs.
 *
 * @param price by how much the goal would improve for a unit more of the limit
 * @param gain by how much it improves for {@value AllocationResult#STEP} of the unit more, solved again
 * @param reach how far the price holds
 */
record LimitPrice(double price, double gain, Reach reach) {

    /** Part of what a price promises for the large step by which the gain may differ without a remark. */
    private static final double HELD_WITHIN = 0.1;

    /** Part of what a price promises for the small step that this has to gain: curved costs take some, minimums nearly all. */
    private static final double LEAST_HELD = 0.5;

    /** How far a price holds. */
    enum Reach {
        /** For {@value AllocationResult#STEP} of the unit, within 10 %. */
        LARGE_STEP,
        /** For {@value AllocationResult#SMALL_STEP} of the unit, to a half at least. */
        SMALL_STEP,
        /** For next to nothing: the price is the mean over the large step instead. */
        MEAN
    }

    /** Of a limit that costs nothing. */
    static final LimitPrice NONE = new LimitPrice(0, 0, Reach.LARGE_STEP);

    /**
     * The price that gains bear out. A multiplier holds for as long as the same limits and minimums bind. Where limits have just
     * given way by what minimums need, there are next to no rates to choose from, and the first drops that a limit allows
     * more move water between seasons at many times the worth of the rest.
     *
     * @param multiplier by how much the goal improves for a unit more, as long as the same limits and minimums bind
     * @param gains what so much of the unit more gains, solved again; asked for the small step only where the large one does
     *     not bear the multiplier out
     */
    static LimitPrice of(double multiplier, DoubleUnaryOperator gains) {
        double gain = gains.applyAsDouble(AllocationResult.STEP);
        if (Math.abs(gain / (multiplier * AllocationResult.STEP) - 1) <= HELD_WITHIN) {
            return new LimitPrice(multiplier, gain, Reach.LARGE_STEP);
        }
        double smallGain = gains.applyAsDouble(AllocationResult.SMALL_STEP);
        return smallGain / (multiplier * AllocationResult.SMALL_STEP) >= LEAST_HELD
                ? new LimitPrice(multiplier, gain, Reach.SMALL_STEP)
                : new LimitPrice(gain / AllocationResult.STEP, gain, Reach.MEAN);
    }

    /** What has to be said of it; empty if nothing. */
    String remark(String unit) {
        return switch (reach) {
            case LARGE_STEP -> "";
            case SMALL_STEP ->
                String.format(
                        Locale.ROOT,
                        "the price is for less than %s %s: that much more gains over 10 %% less or more than it says, as other limits or"
                                + " minimums bind before or costs are curved",
                        AllocationResult.STEP,
                        unit);
            case MEAN ->
                String.format(
                        Locale.ROOT,
                        "the price is the mean over %s %s more, as other limits or minimums bind before %s more",
                        AllocationResult.STEP,
                        unit,
                        AllocationResult.SMALL_STEP);
        };
    }
}
