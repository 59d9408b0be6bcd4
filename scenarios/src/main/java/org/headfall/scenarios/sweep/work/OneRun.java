package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.responses.StoredResponses;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.run.RunFromResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.run.RunWithoutFiles;
import org.headfall.scenarios.sweep.document.BaseScenario;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.store.RunOutcome;

/** Makes single runs of a sweep. For many threads. */
final class OneRun {

    /** Reason of a run after which the sweep ends, for the process is not sound any more. */
    static final String OUT_OF_MEMORY = "not enough memory";

    private static final String SIMULATED = "simulated";
    private static final String SUPERPOSED = "unit responses";
    private static final double NANOSECONDS = 1e-9;

    private final BaseScenario base;
    private final List<KeptFigure> figures;
    private final boolean interference;
    private final SharedResponses responses;
    private final String program;

    OneRun(SweepDocument sweep, SharedResponses responses, String program) {
        this.responses = responses;
        base = sweep.base();
        figures = sweep.figures();
        interference = figures.stream().anyMatch(KeptFigure::needsInterference);
        this.program = program;
    }

    /** Makes a run; whatever goes wrong with it becomes its outcome, but for a lack of memory, which ends the sweep. */
    RunOutcome outcome(int number, Map<Variable, Input> inputs) {
        long started = System.nanoTime();
        try {
            RunPlan plan = RunPlanner.plan(base.read(base.with(inputs)), program, 1);
            Optional<FinishedRun> superposed = superposed(inputs, plan);
            FinishedRun run = superposed.orElseGet(() -> RunWithoutFiles.of(plan, interference));
            double[] values =
                    figures.stream().mapToDouble(figure -> figure.valueIn(run)).toArray();
            return new RunOutcome(
                    number, values, "", superposed.isPresent() ? SUPERPOSED : SIMULATED, seconds(started));
        } catch (OutOfMemoryError tooLarge) {
            return failed(number, OUT_OF_MEMORY, started);
        } catch (InputException invalid) {
            return failed(number, "not a valid scenario: " + String.valueOf(invalid.getMessage()), started);
        } catch (IOException | RuntimeException failure) {
            return failed(number, Optional.ofNullable(failure.getMessage()).orElse(failure.toString()), started);
        }
    }

    /** The answer from unit responses, if the run shares some and their accuracy is enough for it. */
    private Optional<FinishedRun> superposed(Map<Variable, Input> inputs, RunPlan plan) {
        Optional<StoredResponses> stored = responses.forRun(inputs, plan);
        if (stored.isEmpty()) {
            return Optional.empty();
        }
        RunFromResponses answer = new RunFromResponses(plan, stored.get(), "this sweep");
        return answer.reasonToSimulate().isPresent() ? Optional.empty() : Optional.of(answer.finished());
    }

    private static RunOutcome failed(int number, String reason, long started) {
        return new RunOutcome(number, new double[0], reason, "", seconds(started));
    }

    private static double seconds(long started) {
        return (System.nanoTime() - started) * NANOSECONDS;
    }
}
