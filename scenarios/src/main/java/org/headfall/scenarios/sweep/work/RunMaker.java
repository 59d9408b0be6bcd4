package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.run.FewSources;
import org.headfall.scenarios.run.OwnResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.run.RunWithoutFiles;
import org.headfall.scenarios.sweep.document.BaseScenario;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.figures.CrossedCells;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.store.RunOutcome;

/** Makes single runs of a sweep, on whatever computer it is asked to. For many threads. */
public final class RunMaker {

    private static final String SIMULATED = "simulated";
    private static final String OWN_RESPONSES = "unit responses of its own";
    private static final String FEW_SOURCES = "few sources";
    private static final byte[] NO_MAPS = {};
    private static final double NANOSECONDS = 1e-9;

    private final BaseScenario base;
    private final List<KeptFigure> figures;
    private final boolean interference;
    private final boolean needsGrid;
    private final boolean fewSources;
    private final Optional<KeptHeads> heads;
    private final SharedResponses responses;
    private final RunList runs;
    private final String program;
    private final String host = RunOutcome.nameOfHost();

    /**
     * A maker of runs.
     *
     * @param sweep the sweep
     * @param runs its runs
     * @param program program and version
     * @param threads threads that will ask for runs at a time
     * @param folder where heads go if the sweep keeps them; none where files would be lost
     */
    public RunMaker(SweepDocument sweep, RunList runs, String program, int threads, Optional<Path> folder) {
        this.runs = runs;
        responses = new SharedResponses(sweep, runs, program, threads);
        base = sweep.base();
        figures = sweep.figures();
        interference = sweep.needsInterference();
        needsGrid = sweep.needsGrid();
        fewSources = fewSourcesSuffice(sweep);
        heads = folder.filter(any -> sweep.keepsHeads()).map(KeptHeads::new);
        this.program = program;
    }

    /** How many runs of the whole sweep are answered from responses that they share, if their accuracy allows. */
    public int shared() {
        return responses.shared();
    }

    /** Numbers of runs in an order in which those that share something follow each other. */
    public List<Integer> inOrderOfWork(List<Integer> numbers) {
        return responses.inOrderOfWork(numbers);
    }

    /**
     * Makes a run.
     *
     * @param number its number
     * @return what came of it; whatever goes wrong becomes its reason to have failed
     */
    public RunOutcome outcome(int number) {
        long started = System.nanoTime();
        Map<Variable, Input> inputs = runs.get(number - 1);
        try {
            ScenarioReading reading = base.read(base.with(inputs));
            reading.orThrow();
            Optional<RateGroup> group = responses.forRun(inputs);
            Optional<RateGroup.Answer> answered =
                    group.isPresent() ? group.get().answer(inputs, reading) : Optional.empty();
            Made made = answered.isPresent()
                    ? new Made(answered.get().run(), answered.get().way(), NO_MAPS)
                    : alone(number, reading, group);
            double[] values = figures.stream()
                    .mapToDouble(figure -> figure.valueIn(made.run()))
                    .toArray();
            return RunOutcome.finished(number, values, made.way(), seconds(started), host, made.maps());
        } catch (OutOfMemoryError tooLarge) {
            return RunOutcome.outOfMemory(number, seconds(started), host);
        } catch (InputException invalid) {
            return failed(number, notValid(invalid), started);
        } catch (IOException | RuntimeException failure) {
            return failed(number, Optional.ofNullable(failure.getMessage()).orElse(failure.toString()), started);
        }
    }

    @SuppressWarnings("ArrayRecordComponent") // handed on once, never compared
    private record Made(FinishedRun run, String way, byte[] maps) {}

    /** A run that shares nothing: from few sources or responses of its own if that is cheaper, else simulated. */
    private Made alone(int number, ScenarioReading reading, Optional<RateGroup> group)
            throws InputException, IOException {
        RunPlan plan = group.isPresent() ? group.get().plan(reading) : RunPlanner.plan(reading, program, 1);
        if (group.isEmpty() && !needsGrid) {
            Optional<FinishedRun> few = fewSources ? FewSources.answer(plan) : Optional.empty();
            if (few.isPresent()) {
                return new Made(few.get(), FEW_SOURCES, NO_MAPS);
            }
            Optional<FinishedRun> answered = OwnResponses.answer(plan, interference);
            if (answered.isPresent()) {
                return new Made(answered.get(), OWN_RESPONSES, NO_MAPS);
            }
        }
        RunWithoutFiles.WithMaps simulated = heads.isPresent()
                ? heads.get().simulate(number, plan, interference)
                : RunWithoutFiles.withMaps(plan, interference);
        return new Made(simulated.run(), SIMULATED, CrossedCells.pack(simulated.crossed()));
    }

    /** Whether figures need neither the grid nor the effects of single bores. */
    static boolean fewSourcesSuffice(SweepDocument sweep) {
        return !sweep.needsGrid() && !sweep.needsInterference();
    }

    /** Why a run with such a document has failed. */
    static String notValid(InputException invalid) {
        return "not a valid scenario: " + invalid.getMessage();
    }

    private RunOutcome failed(int number, String reason, long started) {
        return RunOutcome.failed(number, reason, seconds(started), host);
    }

    private static double seconds(long started) {
        return (System.nanoTime() - started) * NANOSECONDS;
    }
}
