package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.results.FinishedRun;
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

    private static final double NANOSECONDS = 1e-9;

    private final BaseScenario base;
    private final List<KeptFigure> figures;
    private final boolean interference;
    private final String program;

    OneRun(SweepDocument sweep, String program) {
        base = sweep.base();
        figures = sweep.figures();
        interference = figures.stream().anyMatch(KeptFigure::needsInterference);
        this.program = program;
    }

    /** Makes a run; whatever goes wrong with it becomes its outcome, but for a lack of memory, which ends the sweep. */
    RunOutcome outcome(int number, Map<Variable, Input> inputs) {
        long started = System.nanoTime();
        try {
            double[] values = figures(inputs);
            return new RunOutcome(number, values, "", "simulated", seconds(started));
        } catch (OutOfMemoryError tooLarge) {
            return failed(number, OUT_OF_MEMORY, started);
        } catch (InputException invalid) {
            return failed(number, "not a valid scenario: " + String.valueOf(invalid.getMessage()), started);
        } catch (IOException | RuntimeException failure) {
            return failed(number, Optional.ofNullable(failure.getMessage()).orElse(failure.toString()), started);
        }
    }

    private double[] figures(Map<Variable, Input> inputs) throws InputException, IOException {
        RunPlan plan = RunPlanner.plan(base.read(base.with(inputs)), program, 1);
        FinishedRun run = RunWithoutFiles.of(plan, interference);
        return figures.stream().mapToDouble(figure -> figure.valueIn(run)).toArray();
    }

    private static RunOutcome failed(int number, String reason, long started) {
        return new RunOutcome(number, new double[0], reason, "", seconds(started));
    }

    private static double seconds(long started) {
        return (System.nanoTime() - started) * NANOSECONDS;
    }
}
