package org.headfall.scenarios.run;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.headfall.scenarios.findings.ArtesianHeadAnalysis;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.findings.Findings;
import org.headfall.scenarios.findings.Recoveries;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitEvaluation;
import org.headfall.scenarios.limits.LimitEvidence;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.MapSeries;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.AnsweredFrom;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.RunFigures;
import org.headfall.solver.response.SuperposedState;
import org.headfall.solver.simulation.RunStatistics;

/** What is made of heads and discharges at the stations alone: series, findings without causes, limits, figures of the run. */
final class StationAnswer {

    /** Error of head that is stated at least (m). */
    private static final double STATED = 0.001;

    private static final String METHOD =
            "Estimate of the error of answering by superposition and of the unit responses, no bound, at least 1 mm; the errors of"
                    + " the grid and of the distance of a far boundary are those of a simulation, or of the run that the responses come from. The"
                    + " error of the data is not in it.";

    private final RunPlan plan;
    private final String source;
    private final Optional<String> aquiferKey;
    private final long started;

    /**
     * Answers of a run.
     *
     * @param plan the run
     * @param source what it is answered from, in words
     * @param aquiferKey key of what the responses of another run depend on; absent if they are the run's own
     * @param started when the answer was begun, by {@link System#nanoTime}
     */
    StationAnswer(RunPlan plan, String source, Optional<String> aquiferKey, long started) {
        this.plan = plan;
        this.source = source;
        this.aquiferKey = aquiferKey;
        this.started = started;
    }

    /**
     * The finished run without anything by cause, without grids and water balance.
     *
     * @param series the run, and those that limits compare it with
     * @param steps steps taken
     * @param estimatedError error of head as estimated (m)
     */
    FinishedRun withoutCauses(RunSeries series, int steps, double estimatedError) {
        Recording recording = recording(series.series());
        return new FinishedRun(
                plan.description(),
                recording,
                new Findings(
                        new ArtesianHeadAnalysis(plan.description(), recording).ofAllStations(),
                        List.of(),
                        List.of(),
                        List.of(),
                        Confinement.of(plan.description(), recording),
                        Recoveries.NONE),
                judged(series, estimatedError, plan.limits()),
                figures(steps, estimatedError));
    }

    /** Judges limits by series that are off by an estimated error (m). */
    List<LimitResult> judged(RunSeries series, double estimatedError, List<Limit> limits) {
        return evaluation(series, estimatedError).evaluate(limits);
    }

    /** Evaluation of series that are off by at most an estimated error (m). */
    LimitEvaluation evaluation(RunSeries series, double estimatedError) {
        double[] errors = new double[plan.description().stations().size()];
        Arrays.fill(errors, statedError(estimatedError));
        LimitEvidence evidence =
                new LimitEvidence(series, errors, List.of(), plan.mapPlaces(), MapSeries.NONE, Map.of());
        return new LimitEvaluation(plan.description(), evidence);
    }

    private static double statedError(double estimated) {
        return Math.max(STATED, estimated);
    }

    /** Figures of an answer that took some steps and is off by an estimated error (m). */
    RunFigures figures(int steps, double estimatedError) {
        double seconds = (System.nanoTime() - started) * 1e-9;
        RunDescription description = plan.description();
        return new RunFigures(
                new RunStatistics(description.grid().cellCount(), steps, 0, 0, 0, estimatedError, 0, seconds),
                Collections.nCopies(description.stations().size(), statedError(estimatedError)),
                METHOD,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new AnsweredFrom(source, aquiferKey, estimatedError)),
                seconds,
                PeakMemory.bytes(),
                Runtime.getRuntime().availableProcessors());
    }

    private static Recording recording(List<StationSeries> series) {
        return new Recording(series.get(0).days(), series, List.of(), List.of(), new double[0]);
    }

    /** What some states are at the stations. */
    Recording recorded(List<SuperposedState> states) {
        return recording(series(states));
    }

    /** Series of each station through some states. */
    List<StationSeries> series(List<SuperposedState> states) {
        double[] days = states.stream().mapToDouble(SuperposedState::day).toArray();
        int stations = plan.description().stations().size();
        double[][] head = new double[stations][days.length];
        double[][] level = new double[stations][days.length];
        double[][] discharge = new double[stations][days.length];
        double[][] asked = new double[stations][days.length];
        for (int k = 0; k < days.length; k++) {
            SuperposedState state = states.get(k);
            double[] levels = state.levelInBore();
            spread(state.head(), Integer.MAX_VALUE, head, k);
            spread(levels, Integer.MAX_VALUE, level, k);
            spread(state.discharge(), Integer.MAX_VALUE, discharge, k);
            spread(state.asked(), levels.length, asked, k);
        }
        return IntStream.range(0, stations)
                .mapToObj(i -> new StationSeries(days, head[i], level[i], discharge[i], asked[i]))
                .toList();
    }

    /** Puts the first values of a state into the series of their stations; of the others there is none, NaN. */
    private static void spread(double[] values, int atMost, double[][] series, int k) {
        int known = Math.min(values.length, atMost);
        for (int station = 0; station < series.length; station++) {
            series[station][k] = station < known ? values[station] : Double.NaN;
        }
    }
}
