package org.headfall.scenarios.evidence;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.headfall.scenarios.evidence.CheckedItem.State;
import org.headfall.scenarios.findings.HeadFit;
import org.headfall.scenarios.results.FinishedRun;

/** Items on how a run meets what was measured. */
final class DataChecks {

    /** Root mean square error over the range of measured heads that is often called reasonable (-). */
    private static final double REASONABLE = 0.1;

    private final FinishedRun run;
    private final Optional<HeadFit> fit;

    DataChecks(FinishedRun run) {
        this.run = run;
        fit = HeadFit.of(run.description(), run.recording());
    }

    List<CheckedItem> items() {
        return List.of(heads(), length());
    }

    private CheckedItem heads() {
        return new CheckedItem(
                "Computed heads meet measured ones",
                "ASTM D5490; root mean square below a tenth of the range: common practice, no source",
                fit.map(found -> found.overRange() < REASONABLE ? State.SHOWN : State.NOT_MET)
                        .orElse(State.NOT_SHOWN),
                fit.map(found -> String.format(
                                Locale.ROOT,
                                "%d heads: mean error %+.2f m, mean absolute %.2f m, root mean square %.2f m (%.0f %% of the"
                                        + " measured range); worst %+.2f m at %s on %s; measured-heads.csv.",
                                found.count(),
                                found.mean(),
                                found.meanAbsolute(),
                                found.rootMeanSquare(),
                                100 * found.overRange(),
                                found.worst(),
                                found.worstStation(),
                                run.description()
                                        .calendar()
                                        .at(found.worstDay())
                                        .toLocalDate()))
                        .orElse("No measured heads were given."));
    }

    private CheckedItem length() {
        return new CheckedItem(
                "The time predicted is in proportion to the time of the data",
                ReviewChecklist.GUIDELINES + ", table 2-1: below 3, 3 to 10 and more than 10 times",
                fit.filter(found -> found.lastDay() > found.firstDay()).isPresent() ? State.SHOWN : State.NOT_SHOWN,
                fit.filter(found -> found.lastDay() > found.firstDay())
                        .map(found -> String.format(
                                Locale.ROOT,
                                "%.1f times as long as the measured heads reach.",
                                run.description().endDay() / (found.lastDay() - found.firstDay())))
                        .orElse("Fewer than two days of measured heads within the run."));
    }
}
