package org.headfall.scenarios.run;

import java.util.Optional;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPlace;

/** When heads at bores, springs and points, found without stepping through the run, answer all that is asked of it. */
final class AnswerAtStations {

    /** Shifts that a source is solved for from a thousandth of a day to the end of 50 years, about. */
    static final int SOLVES_PER_SOURCE = 24;

    /** Solves of the grid from one record of a simulation to the next, about. */
    private static final double SOLVES_PER_STEP = 2.5;

    private AnswerAtStations() {}

    /** The first limit that asks for heads on the map or after the end of the run. */
    static Optional<Limit> limitBeyond(RunPlan plan) {
        return plan.limits().stream()
                .filter(limit -> !(limit.place() instanceof LimitPlace.AtStation)
                        || limit.period().afterTakingStops())
                .findFirst();
    }

    /** Whether some sources take fewer solves than a simulation. */
    static boolean takesFewerSolvesThanSteps(int sources, RunPlan plan) {
        return SOLVES_PER_SOURCE * sources < SOLVES_PER_STEP * plan.stationDays().length;
    }
}
