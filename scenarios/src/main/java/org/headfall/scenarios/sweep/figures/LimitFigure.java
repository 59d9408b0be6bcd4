package org.headfall.scenarios.sweep.figures;

import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.results.FinishedRun;

/**
 * What a run says about a limit at one place. Kept of every limit of the base scenario without being asked for.
 *
 * @param limit name of the limit
 * @param place name of the place
 * @param unit unit of its margin
 * @param aspect what is kept
 */
public record LimitFigure(String limit, String place, String unit, Aspect aspect) implements KeptFigure {

    /** What is kept of a limit. */
    public enum Aspect {
        /** Distance to the allowed value, negative beyond it. */
        MARGIN("margin"),
        /** Time of the first crossing. */
        CROSSING("first crossing");

        private final String words;

        Aspect(String words) {
            this.words = words;
        }

        /** Its name in a sweep document. */
        public String words() {
            return words;
        }
    }

    @Override
    public String name() {
        return aspect.words + " of " + limit + " at " + place;
    }

    @Override
    public String unit() {
        return aspect == Aspect.MARGIN ? unit : "yr after the start";
    }

    @Override
    public double valueIn(FinishedRun run) {
        Outcome outcome = run.limits().stream()
                .filter(result -> result.limit().name().equals(limit)
                        && result.limit().station().equals(place))
                .map(LimitResult::outcome)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("the run has no limit " + limit + " at " + place));
        return aspect == Aspect.MARGIN
                ? outcome.worstIfAny().map(Outcome.Worst::margin).orElse(Double.NaN)
                : firstDay(outcome) / RunCalendar.DAYS_PER_YEAR;
    }

    private static double firstDay(Outcome outcome) {
        if (outcome instanceof Outcome.Crossed crossed) {
            return crossed.firstDay();
        }
        return outcome instanceof Outcome.Undecided undecided
                ? undecided.firstDay().orElse(Double.NaN)
                : Double.NaN;
    }
}
