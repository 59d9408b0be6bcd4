package org.headfall.scenarios.findings;

import java.util.OptionalDouble;
import org.headfall.scenarios.quantity.DischargeUnit;

/**
 * A whole that percentages of its parts are told of, where that says anything. Parts of both signs can cancel to a whole that is
 * small beside them: 3.03 m by others are 777 % of the 0.39 m that are left where the bore itself gives 2.64 m less. So none is
 * told of a whole of less than half of what its parts come to without their signs, hence none beyond 150 % (common
 * practice, no source), nor of a whole that is next to nothing.
 *
 * @param whole the sum of the parts
 * @param sense whether shares of it say anything
 */
public record ShareBase(double whole, Sense sense) {

    /** Smallest drawdown that shares are told of (m): what reports show it to. */
    public static final double LEAST_DRAWDOWN = 0.01;

    /** Smallest loss of discharge that shares are told of (m³/d): 0.01 L/s. */
    public static final double LEAST_LOSS = DischargeUnit.LITRES_PER_SECOND.toCubicMetresPerDay(0.01);

    /** Share of the parts without their signs that the whole comes to at least. */
    private static final double LEAST_LEFT = 0.5;

    /** How far below that bound a whole may be by rounding alone, as a share of the bound. */
    private static final double ROUNDING = 1e-9;

    private static final double PERCENT = 100;

    /** Whether shares of a whole say anything. */
    public enum Sense {
        /** They do. */
        SOUND(""),
        /** The whole is too small to be divided by. */
        NEXT_TO_NOTHING("next to nothing in all"),
        /** The parts are much larger than their sum. */
        CANCELLED("parts for and against mostly cancel");

        private final String whyNot;

        Sense(String whyNot) {
            this.whyNot = whyNot;
        }

        /** Why there are no shares, in words; blank where there are. */
        public String whyNot() {
            return whyNot;
        }
    }

    /**
     * Judges a whole by its parts.
     *
     * @param least smallest whole that shares are told of, of either sign; in the unit of the whole, as the parts are
     * @param whole their sum
     * @param parts the parts
     * @return the base
     */
    public static ShareBase of(double least, double whole, double... parts) {
        double sizes = 0;
        for (double part : parts) {
            sizes += Math.abs(part);
        }
        if (!(Math.abs(whole) >= least)) {
            return new ShareBase(whole, Sense.NEXT_TO_NOTHING);
        }
        boolean cancelled = Math.abs(whole) < LEAST_LEFT * sizes * (1 - ROUNDING);
        return new ShareBase(whole, cancelled ? Sense.CANCELLED : Sense.SOUND);
    }

    /** Share of a part (%); none where it says nothing. */
    public OptionalDouble percent(double part) {
        return sense == Sense.SOUND ? OptionalDouble.of(PERCENT * part / whole) : OptionalDouble.empty();
    }
}
