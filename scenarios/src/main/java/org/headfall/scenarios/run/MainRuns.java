package org.headfall.scenarios.run;

import java.util.Locale;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.scenario.Solving;
import org.headfall.solver.flow.UnmetRuleException;
import org.headfall.solver.response.FieldResponses;
import org.headfall.solver.response.SuperpositionException;

/**
 * Chooses how the main run is found. Unit responses are wanted of every run, so superposition costs little more than sums of
 * their solutions; it is taken unless its error may exceed the tolerance of heads or its rules cannot be met.
 */
final class MainRuns {

    /** Steps that follow a jump until they are long again. */
    private static final int STEPS_AFTER_JUMP = 10;

    private final RunPlan plan;
    private final StartState start;
    private final RecordPlan records;
    private final RunResponses responses;
    private final RunProgress progress;

    MainRuns(RunPlan plan, StartState start, RecordPlan records, RunResponses responses, RunProgress progress) {
        this.plan = plan;
        this.start = start;
        this.records = records;
        this.responses = responses;
        this.progress = progress;
    }

    /** The way that is asked for, or suits. */
    MainRun choose() {
        if (plan.solving() == Solving.BY_STEPS) {
            return steps("as the document says");
        }
        if (plan.solving() == Solving.AUTOMATIC && plan.doubts()) {
            return steps("so are the repeats that its errors are found by");
        }
        progress.reached("computing unit responses", 0);
        try {
            FieldResponses fields = responses.fields(plan, start);
            return plan.solving() == Solving.BY_SUPERPOSITION
                    ? superposed(fields, "as the document says")
                    : cheaper(fields);
        } catch (UnmetRuleException | SuperpositionException known) {
            return steps("superposition cannot answer it, " + known.getMessage());
        }
    }

    private SuperposedMainRun superposed(FieldResponses fields, String why) {
        return new SuperposedMainRun(plan, start, records, fields, progress, why);
    }

    private MainRun cheaper(FieldResponses fields) {
        SuperposedMainRun run = superposed(
                fields, "it keeps the head tolerance and is cheaper than some " + expectedSteps() + " steps");
        double allowed = plan.settings().accuracy();
        return run.estimatedError() <= allowed
                ? run
                : steps(String.format(
                        Locale.ROOT,
                        "superposition may err by %.4f m, above the head tolerance of %.4f m",
                        run.estimatedError(),
                        allowed));
    }

    private MainRun steps(String why) {
        return new SteppedMainRun(plan, start, records, progress, why);
    }

    private int expectedSteps() {
        double end = plan.description().endDay();
        return records.days().length + STEPS_AFTER_JUMP * (1 + plan.problem().jumps(0, end).length);
    }
}
