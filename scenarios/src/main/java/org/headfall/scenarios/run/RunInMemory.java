package org.headfall.scenarios.run;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LeftOut;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitEvaluation;
import org.headfall.scenarios.limits.LimitMargins;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.RecordSink;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.scenario.Solving;
import org.headfall.scenarios.spatial.Position;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.HeadDependence;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.flow.UnmetRuleException;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.response.HeadAnswers;
import org.headfall.solver.response.RunWithout;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.response.SuperposedRun;
import org.headfall.solver.response.SuperpositionException;
import org.headfall.solver.response.UnitResponses;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.headfall.solver.simulation.SimulationObserver;
import org.headfall.solver.simulation.Snapshot;

/** A run of which nothing is written: what searches for sites or rates starts from, and what it is held against. */
public final class RunInMemory {

    private final RunPlan plan;
    private final Recording recording;
    private final UnitResponses responses;
    private final LimitEvaluation limits;
    private final RateHistory history;
    private final double[] lastDischarge;

    private RunInMemory(
            RunPlan plan,
            Recording recording,
            UnitResponses responses,
            LimitEvaluation limits,
            RateHistory history,
            double[] lastDischarge) {
        this.plan = plan;
        this.recording = recording;
        this.responses = responses;
        this.limits = limits;
        this.history = history;
        this.lastDischarge = lastDischarge;
    }

    /**
     * Runs a plan of which the responses are known.
     *
     * @param plan the plan
     * @param responses unit responses of its problem, which do not depend on rates
     * @param progress is told how far the run has come
     * @return the run
     */
    public static RunInMemory of(RunPlan plan, UnitResponses responses, RunProgress progress) {
        return of(plan, responses, new double[0], new RecordSink() {}, progress);
    }

    /**
     * Runs a plan of which the responses are known, and hands heads of its grid on.
     *
     * @param plan the plan
     * @param responses unit responses of its problem, which do not depend on rates
     * @param gridDays days on which heads of the grid are handed on, besides the start and the end (d)
     * @param grids is handed them
     * @param progress is told how far the run has come
     * @return the run
     */
    public static RunInMemory of(
            RunPlan plan, UnitResponses responses, double[] gridDays, RecordSink grids, RunProgress progress) {
        double end = plan.description().endDay();
        double[] handedOn = sorted(gridDays, 0, end);
        RecordPlan planned = RecordPlan.of(plan.description(), plan.stationDays(), handedOn);
        RecordPlan records = new RecordPlan(planned.days(), handedOn, new double[] {0, end});
        progress.reached("finding heads at the start", 0);
        StartState start = StartState.of(plan.problem(), plan.start(), plan.settings());
        Recorder recorder = new Recorder(plan.description(), plan.problem().boundaries(), records, List.of(grids));
        HeadError error = new HeadError(plan.description(), plan.settings().accuracy());
        double[][] last = new double[1][];
        recorder.recorded(start.snapshot());
        try (Simulation simulation = new Simulation(plan.problem(), plan.settings())) {
            Simulation.Outcome outcome =
                    simulation.run(start.heads(), 0, end, records.days(), new SimulationObserver() {
                        @Override
                        public void recorded(Snapshot snapshot) {
                            recorder.recorded(snapshot);
                            error.recorded(snapshot);
                            last[0] = DoubleStream.concat(
                                            Arrays.stream(snapshot.boreRate()),
                                            Arrays.stream(snapshot.springDischarge()))
                                    .toArray();
                        }

                        @Override
                        public void reached(double day) {
                            progress.reached("simulating", day / end);
                        }
                    });
            Recording recording = recorder.recording();
            RunSeries series = new ComparisonRuns(
                            plan.description(),
                            plan.problem(),
                            plan.settings().accuracy(),
                            responses,
                            outcome.rateHistory(),
                            recording.series())
                    .forLimits(plan.limits());
            double[] errors =
                    error.atStations().stream().mapToDouble(Double::doubleValue).toArray();
            return new RunInMemory(
                    plan,
                    recording,
                    responses,
                    new LimitEvaluation(plan.description(), series, errors, List.of()),
                    outcome.rateHistory(),
                    last[0]);
        }
    }

    /**
     * Runs a plan by superposition: series of stations, limits and discharges, no grids.
     *
     * @param plan the plan
     * @param responses responses of its problem
     * @return the run; absent where superposition cannot meet the rules of bores and springs or may err by more than the head
     *     tolerance of the plan, unless the plan asks for it, and where the plan asks for steps: as it is chosen for runs
     */
    public static Optional<RunInMemory> superposed(RunPlan plan, StationResponses responses) {
        if (plan.solving() == Solving.BY_STEPS) {
            return Optional.empty();
        }
        SuperposedRun run;
        try {
            run = superposition(plan, responses);
        } catch (UnmetRuleException | SuperpositionException known) {
            return Optional.empty();
        }
        if (plan.solving() == Solving.AUTOMATIC
                && run.estimatedError() > plan.settings().accuracy()) {
            return Optional.empty();
        }
        StationAnswer answer = new StationAnswer(plan, "this search", Optional.empty(), System.nanoTime());
        Recording recording = answer.recorded(run.states());
        RunSeries series = new ComparisonRuns(
                        plan.description(),
                        plan.problem(),
                        plan.settings().accuracy(),
                        responses.responses(),
                        run.history(),
                        recording.series())
                .forLimits(plan.limits());
        return Optional.of(new RunInMemory(
                plan,
                recording,
                responses.responses(),
                answer.evaluation(series, run.estimatedError()),
                run.history(),
                run.states().get(run.states().size() - 1).discharge()));
    }

    private static SuperposedRun superposition(RunPlan plan, StationResponses responses) {
        double accuracy = SuperposedMainRun.SHARE_OF_STEPS * plan.settings().accuracy();
        SuperposedRun run = plan.start().superposed(plan.problem(), plan.problem(), responses, accuracy);
        double[] days = RecordPlan.of(plan.description(), plan.stationDays(), new double[0])
                .days();
        run.run(days, plan.description().endDay());
        return run;
    }

    /**
     * Runs a plan for the series of its stations alone.
     *
     * @param plan the plan
     * @return series of each station on the days of its plan
     */
    public static List<StationSeries> stations(RunPlan plan) {
        return taking(plan).series();
    }

    /**
     * Runs a plan for the series of its stations and what its bores take.
     *
     * @param plan the plan
     * @return series of each station on the days of its plan, with the volumes of its bores, compared with no other run
     */
    public static RunSeries taking(RunPlan plan) {
        RecordPlan records = RecordPlan.of(plan.description(), plan.stationDays(), new double[0]);
        return Repeat.of(
                        plan.description(),
                        plan.problem(),
                        plan.start(),
                        records.days(),
                        new double[0],
                        plan.settings(),
                        List.of())
                .run()
                .orElseThrow();
    }

    /**
     * Runs a plan up to a day for the head at a place alone, as at a protected point: with what each bore beside it lowers head by.
     *
     * @param plan the plan
     * @param place the place, in a cell of the aquifer
     * @param day the day (d), after the start
     * @param progress is told how far the run has come
     * @return the head (m above datum)
     */
    public static double headAt(RunPlan plan, Position place, double day, RunProgress progress) {
        return headAt(plan.problem(), plan.start(), plan.settings(), place, day, progress);
    }

    /**
     * Runs a plan up to a day as if no bore ever took water, for the head at a place alone. A steady start is one without any
     * taking; given heads at the start stay as they are.
     *
     * @param plan the plan
     * @param place the place, in a cell of the aquifer
     * @param day the day (d), after the start
     * @param progress is told how far the run has come
     * @return the head (m above datum)
     */
    public static double headWithoutTakingAt(RunPlan plan, Position place, double day, RunProgress progress) {
        BitSet all = new BitSet();
        all.set(0, plan.problem().bores().size());
        StartHeads start = plan.start().given().isPresent() ? plan.start() : new StartHeads.Steady(Set.of());
        return headAt(StoppedTaking.always(plan.problem(), all), start, plan.settings(), place, day, progress);
    }

    private static double headAt(
            FlowProblem problem,
            StartHeads startHeads,
            Settings settings,
            Position place,
            double day,
            RunProgress progress) {
        progress.reached("finding heads at the start", 0);
        StartState start = StartState.of(problem, startHeads, settings);
        ObservedHead seen = new ObservedHead(problem.aquifer(), place.x(), place.y(), problem.nearFields());
        double[] head = new double[1];
        try (Simulation simulation = new Simulation(problem, settings)) {
            simulation.run(start.heads(), 0, day, new double[] {day}, new SimulationObserver() {
                @Override
                public void recorded(Snapshot snapshot) {
                    head[0] = seen.at(snapshot.head(), snapshot.boreRate());
                }

                @Override
                public void reached(double now) {
                    progress.reached("simulating", now / day);
                }
            });
        }
        return head[0];
    }

    private static double[] sorted(double[] days, double start, double end) {
        return DoubleStream.concat(DoubleStream.of(start, end), Arrays.stream(days))
                .filter(day -> day >= start && day <= end)
                .sorted()
                .distinct()
                .toArray();
    }

    /** The plan. */
    public RunPlan plan() {
        return plan;
    }

    /** What was recorded: every station, and the grid at the start and the end. */
    public Recording recording() {
        return recording;
    }

    /** Unit responses of the problem. */
    public UnitResponses responses() {
        return responses;
    }

    /** Margins of a limit of the plan. */
    public LimitMargins margins(Limit limit) {
        return limits.margins(limit);
    }

    /**
     * Margins of a limit of the plan in another run of the same stations.
     *
     * @param limit the limit
     * @param changed series of each station in the other run
     */
    public LimitMargins marginsIn(Limit limit, List<StationSeries> changed) {
        return limits.marginsIn(limit, changed);
    }

    /**
     * The same run beside others that its limits compare with.
     *
     * @param others series of the stations in the other run, for each comparison
     */
    public RunInMemory beside(Map<Comparison, List<StationSeries>> others) {
        return others.isEmpty()
                ? this
                : new RunInMemory(plan, recording, responses, limits.beside(others), history, lastDischarge);
    }

    /** Whether a comparison is with another run that is known. */
    public boolean isBeside(Comparison comparison) {
        return limits.isBeside(comparison);
    }

    /**
     * Why a limit of the plan at a station or on volumes cannot be evaluated in this run, whenever it counts.
     *
     * @param limit the limit
     * @return the reason as a sentence; absent if it can
     */
    public Optional<String> obstacle(Limit limit) {
        return limits.obstacle(limit);
    }

    /** Outcome of the limits of the plan. */
    public List<LimitResult> limits() {
        return limits.evaluate(plan.limits());
    }

    /** How strongly bores and springs answered head. */
    public HeadAnswers answers() {
        return HeadAnswers.of(plan.problem(), history);
    }

    /**
     * How strongly they would have answered head in the run that this one is compared with.
     *
     * @param comparison a comparison with the run without some bores
     */
    public HeadAnswers answersWithout(Comparison comparison) {
        RunWithout without = new RunWithout(
                plan.problem(),
                responses,
                history,
                LeftOut.bores(plan.description(), comparison),
                plan.settings().accuracy(),
                new double[0]);
        return HeadAnswers.of(plan.problem(), history, without);
    }

    /** The bores and springs whose discharge follows head at the end of the run. */
    public HeadDependence dependence() {
        return HeadDependence.of(plan.problem(), plan.description().endDay(), lastDischarge);
    }
}
