package org.headfall.cli.answer;

import java.util.List;

/** Whether a field holds. */
public enum Verdict {
    /** No limit is set. */
    NO_LIMITS,
    /** Every limit is kept. */
    HOLDS,
    /** At least one limit is crossed. */
    CROSSED,
    /** None is crossed, but of at least one nothing sure can be said. */
    UNDECIDED;

    static Verdict of(List<LimitAnswer> limits) {
        if (limits.isEmpty()) {
            return NO_LIMITS;
        }
        if (limits.stream().anyMatch(LimitAnswer::crossed)) {
            return CROSSED;
        }
        return limits.stream().allMatch(LimitAnswer::holds) ? HOLDS : UNDECIDED;
    }
}
