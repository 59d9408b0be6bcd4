package org.headfall.scenarios.limits;

import java.util.Optional;

/** What of a limit can be split by cause. */
public enum CauseSplit {
    /** Fall of head since the start of the run. */
    SINCE_THE_START("fall of head since the start of the run"),
    /** Fall of head since the day that the limit compares with. */
    SINCE_A_DAY("fall of head since the date compared with"),
    /** Head without some bores less head with them. */
    WITHOUT_BORES("drawdown beside the run without them"),
    /** Fall of head a year. */
    RATE("fall of head a year"),
    /** Nothing, for the value is a mean over some years. */
    NO_MEAN("not split: it is compared with a mean of years"),
    /** Nothing, for what is compared with another state has causes that are no part of the run. */
    NO_OTHER_RUN("not split: what differs from the other state is not all of this run"),
    /** Nothing, for the value is not that of head at one place. */
    NO_HEAD_AT_ONE_PLACE("not split: it is not head at one place"),
    /** Nothing, for there is no run of the time after taking stops that would say who discharges. */
    AFTER_THE_RUN("not split: the worst day lies after the run"),
    /** Nothing, for there is no worst value. */
    NO_VALUE("");

    private final String words;

    CauseSplit(String words) {
        this.words = words;
    }

    /** Words for tables: what the shares add up to, or why there are none. */
    public String words() {
        return words;
    }

    /** Whether there are shares. */
    public boolean isMade() {
        return this == SINCE_THE_START || this == SINCE_A_DAY || this == WITHOUT_BORES || this == RATE;
    }

    /** Words with unit, and whether it is what the limit limits or only belongs to it. */
    public String wordsFor(Limit limit) {
        if (!isMade()) {
            return words;
        }
        boolean itself = limit.quantity() instanceof LimitedQuantity.Drawdown || this == RATE;
        return words
                + (this == RATE ? " (m/yr)" : " (m)")
                + (itself ? ": the worst value" : ": not the worst value itself");
    }

    /**
     * How the worst value of a limit is split.
     *
     * @param result the limit and its outcome
     * @param endDay last day of the run
     * @return the split, or why there is none
     */
    public static CauseSplit of(LimitResult result, double endDay) {
        Optional<Outcome.Worst> worst = result.outcome().worstIfAny();
        if (worst.isEmpty()) {
            return NO_VALUE;
        }
        Limit limit = result.limit();
        if (!(limit.place() instanceof LimitPlace.AtStation)
                || limit.quantity() instanceof LimitedQuantity.Volume
                || limit.quantity() instanceof LimitedQuantity.Distance) {
            return NO_HEAD_AT_ONE_PLACE;
        }
        if (worst.get().day() > endDay) {
            return AFTER_THE_RUN;
        }
        boolean without = limit.needsOtherRun() && LeftOut.any(limit.comparison());
        if (limit.needsOtherRun() && !without) {
            return NO_OTHER_RUN;
        }
        if (limit.quantity() instanceof LimitedQuantity.DeclineRate) {
            return RATE;
        }
        if (without) {
            return WITHOUT_BORES;
        }
        if (!limit.quantity().measuresAnEffect()) {
            return SINCE_THE_START;
        }
        if (limit.comparison() instanceof Comparison.MeanOfYears) {
            return NO_MEAN;
        }
        return limit.comparison() instanceof Comparison.OnDay ? SINCE_A_DAY : SINCE_THE_START;
    }
}
