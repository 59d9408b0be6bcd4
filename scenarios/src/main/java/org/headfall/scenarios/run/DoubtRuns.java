package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.headfall.scenarios.doubts.CoarserProblem;
import org.headfall.scenarios.doubts.ErrorBudget;
import org.headfall.scenarios.doubts.FartherBoundary;
import org.headfall.scenarios.doubts.WiderCellsException;
import org.headfall.scenarios.limits.ChangedMaps;
import org.headfall.scenarios.limits.ChangedRun;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.ReportDate;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.FlowSystem;
import org.headfall.solver.flow.NoSteadyStateException;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.flow.UnmetRuleException;
import org.headfall.solver.linear.SingularSystemException;
import org.headfall.solver.linear.SolveFailedException;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.time.StepSizeException;

/**
 * The same run on wider cells and with far heads farther out, beside the run itself, and the error budget that comes of
 * comparing them. A repeat that cannot be made, or that the solver cannot finish, takes nothing from the run: its part of the
 * budget stays open and says why. Whatever else a repeat throws is a fault of the program and is thrown where it is asked for.
 */
final class DoubtRuns {

    /** What the error of a station is, in a sentence or two. */
    static final String METHOD = "Sum of the errors of time stepping, grid, solver and distance of a far boundary, as"
            + " far as they were determined; the table of the error budget shows each. The error of the data is not in"
            + " it.";

    private static final String TIME =
            "Time: the estimates of all steps, carried on through the flow equation, at least"
                    + " the error allowed to a step.";
    private static final String GRID = "Grid: a third of the difference to the same run on cells twice as wide"
            + " (Richardson 1911, for a method of second order). It is an estimate, not a bound: where a place"
            + " stands in its cells can make it several times too large or, near sides of the grid, too small.";
    private static final String SOLVER = "Solver: what the linear solver may leave in every step so far if none of it"
            + " died away, and what the rules of bores and springs may be missed by; a bound by the tolerances, not"
            + " measured.";
    private static final String BOUNDARY = "Boundary: the difference to the same run with every far head half as far"
            + " again beyond the rim. What lies beyond other sides is taken as given.";
    private static final String TOGETHER =
            "Together is the plain sum, as if all parts erred the same way. The error of the data is not in it.";

    private final RunPlan plan;
    private final double[] days;
    private final Settings settings;
    private final Future<Repeat> coarser;
    private final Future<Repeat> farther;

    private DoubtRuns(RunPlan plan, double[] days, SideTasks tasks) {
        this.plan = plan;
        this.days = days;
        settings = plan.settings().withThreads(1);
        coarser = tasks.add(unlessItFails(this::onWiderCells));
        farther = tasks.add(unlessItFails(this::withFartherHeads));
    }

    /**
     * Asks for the repeats.
     *
     * @param plan the run
     * @param days days that it records
     * @param tasks where they are done, each by one thread
     * @return the repeats, under way
     */
    static DoubtRuns beside(RunPlan plan, double[] days, SideTasks tasks) {
        return new DoubtRuns(plan, days, tasks);
    }

    /** A repeat, or why there is none if it does not fit or the solver gives up on it. */
    static Callable<Repeat> unlessItFails(Callable<Repeat> repeat) {
        return () -> {
            try {
                return repeat.call();
            } catch (WiderCellsException unfit) {
                return Repeat.notMade(String.valueOf(unfit.getMessage()));
            } catch (UnmetRuleException
                    | NoSteadyStateException
                    | StepSizeException
                    | SolveFailedException
                    | SingularSystemException known) {
                return Repeat.notMade("the repeated run failed (" + known.getMessage() + ")");
            }
        };
    }

    private Repeat onWiderCells() {
        CoarserProblem wider = CoarserProblem.of(plan.problem());
        StartHeads start = plan.start() instanceof StartHeads.Given given
                ? new StartHeads.Given(wider.mean(given.heads()))
                : plan.start();
        RunDescription fine = plan.description();
        RunDescription description = new RunDescription(
                fine.title(),
                fine.purpose(),
                fine.datum(),
                fine.mapReference(),
                fine.calendar(),
                fine.endDay(),
                fine.provenance(),
                wider.problem().aquifer(),
                wider.problem().sealingBed(),
                wider.mean(fine.ground()),
                fine.stations(),
                fine.reportDates(),
                fine.measurements(),
                fine.assumptions());
        return Repeat.of(
                description, wider.problem(), start, days, LimitMaps.daysOfDoubts(plan), settings, plan.limits());
    }

    private Repeat withFartherHeads() {
        Optional<FlowProblem> changed = FartherBoundary.of(plan.problem());
        return changed.isEmpty()
                ? Repeat.notMade("the scenario has no boundary with a far head")
                : Repeat.of(
                        plan.description(),
                        changed.get(),
                        plan.start(),
                        days,
                        LimitMaps.daysOfDoubts(plan),
                        settings,
                        plan.limits());
    }

    /**
     * The budget, once the repeats are done.
     *
     * @param recording what the run recorded
     * @param time its error by time stepping
     * @param history its steps
     * @return the budget
     */
    ErrorBudget budget(Recording recording, HeadError time, RateHistory history) {
        Repeat onWider = SideTasks.result(coarser);
        Repeat withFarther = SideTasks.result(farther);
        List<ErrorBudget.Line> lines = new ArrayList<>();
        List<Double> sums = new ArrayList<>();
        List<ReportDate> dates = plan.description().reportDates();
        for (int station = 0; station < recording.series().size(); station++) {
            StationSeries run = recording.series().get(station);
            String name = plan.description().stations().get(station).name();
            for (int date = 0; date < dates.size(); date++) {
                double day = dates.get(date).day();
                lines.add(new ErrorBudget.Line(
                        name,
                        dates.get(date).label(),
                        day,
                        time.on(date, station),
                        gridError(onWider, run, station, day),
                        solverError(history, day),
                        difference(withFarther, run, station, day)));
            }
            sums.add(time.atStations().get(station)
                    + largest(onWider, run, station) / CoarserProblem.DIFFERENCE_OVER_ERROR
                    + solverError(history, recording.endDay())
                    + largest(withFarther, run, station));
        }
        return new ErrorBudget(lines, sums, methods(onWider, withFarther));
    }

    /**
     * The repeats that were made, with the share of a difference to them that is an error of the run.
     *
     * @return the changed runs by which limits are judged
     */
    List<ChangedRun> changedRuns() {
        List<ChangedRun> changed = new ArrayList<>();
        Repeat onWider = SideTasks.result(coarser);
        onWider.run()
                .ifPresent(run -> changed.add(new ChangedRun(
                        run,
                        maps(onWider, () -> CoarserProblem.of(plan.problem()).parents()),
                        1 / CoarserProblem.DIFFERENCE_OVER_ERROR)));
        Repeat withFarther = SideTasks.result(farther);
        withFarther.run().ifPresent(run -> changed.add(new ChangedRun(run, maps(withFarther, this::sameCells), 1)));
        return changed;
    }

    private static ChangedMaps maps(Repeat repeat, Supplier<int[]> parents) {
        return repeat.maps().grids().isEmpty() ? ChangedMaps.NONE : new ChangedMaps(repeat.maps(), parents.get());
    }

    private int[] sameCells() {
        return IntStream.range(0, plan.description().grid().cellCount()).toArray();
    }

    /**
     * Error of head by time stepping and solver at each station, which holds for other values made of heads too.
     *
     * @param time the run's error by time stepping
     * @param history its steps
     * @return largest of all recorded days (m), in the order of the stations
     */
    double[] stepError(HeadError time, RateHistory history) {
        double solver = solverError(history);
        return time.atStations().stream().mapToDouble(error -> error + solver).toArray();
    }

    /** What the solver and the rules of bores may leave in the whole run at most (m). */
    double solverError(RateHistory history) {
        return solverError(history, plan.description().endDay());
    }

    private static OptionalDouble gridError(Repeat onWider, StationSeries run, int station, double day) {
        OptionalDouble difference = difference(onWider, run, station, day);
        return difference.isPresent()
                ? OptionalDouble.of(difference.getAsDouble() / CoarserProblem.DIFFERENCE_OVER_ERROR)
                : difference;
    }

    private static OptionalDouble difference(Repeat repeat, StationSeries run, int station, double day) {
        return repeat.run().isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        Math.abs(repeat.run().get().series().get(station).headAt(day) - run.headAt(day)));
    }

    /** Largest difference of head on a recorded day. */
    private static double largest(Repeat repeat, StationSeries run, int station) {
        if (repeat.run().isEmpty()) {
            return 0;
        }
        double[] repeated = repeat.run().get().series().get(station).head();
        return IntStream.range(0, repeated.length)
                .mapToDouble(k -> Math.abs(repeated[k] - run.head()[k]))
                .max()
                .orElse(0);
    }

    private double solverError(RateHistory history, double day) {
        int steps = 0;
        while (steps < history.steps() && history.startOf(steps + 1) <= day) {
            steps++;
        }
        return FlowSystem.largestSolverError(settings.accuracy(), steps);
    }

    private static List<String> methods(Repeat onWider, Repeat withFarther) {
        return List.of(
                TIME,
                onWider.run().isPresent() ? GRID : "Grid: not determined; " + onWider.reason() + ".",
                SOLVER,
                withFarther.run().isPresent() ? BOUNDARY : "Boundary: left out; " + withFarther.reason() + ".",
                TOGETHER);
    }
}
