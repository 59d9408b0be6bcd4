package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.headfall.scenarios.findings.Recovery;
import org.headfall.scenarios.findings.RecoveryAnalysis;
import org.headfall.scenarios.recording.Station;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.response.SuperposedRun;
import org.headfall.solver.response.SuperposedState;

/**
 * How places recover when taking stops at the end of a run, or where it has stopped before, on that day: by superposition of
 * unit responses, the run with the bores until then beside the run without them. Once for the proposed bores, and once
 * for all. Boundaries, recharge and other bores go on as they are on the last day.
 */
final class RecoveryRuns {

    /** How many times the period of the run is looked at after its end. */
    private static final double PERIODS = 16;

    /** Longest time (d): a thousand years, as long as a period may be. */
    private static final double LONGEST = 365_250;

    private static final double FIRST_RECORD = 0.01;
    private static final int RECORDS_PER_DECADE = 24;

    private final RunPlan plan;
    private final StationResponses responses;
    private final double accuracy;

    private RecoveryRuns(RunPlan plan, StationResponses responses) {
        this.plan = plan;
        this.responses = responses;
        accuracy = Math.min(plan.settings().accuracy(), RunFromResponses.PROMISED);
    }

    /**
     * Time for which responses have to be known.
     *
     * @param endDay last day of the run (d)
     * @return time (d)
     */
    static double horizon(double endDay) {
        return Math.max(endDay, Math.min(LONGEST, (1 + PERIODS) * endDay));
    }

    /**
     * Recovery at all stations.
     *
     * @param plan the run
     * @param responses responses of its problem; recovery is followed as long as they are known
     * @return a line a taking and station; none if responses end with the run, nothing is taken, or the rules of the bores
     *     and springs cannot be met so
     */
    static List<Recovery> of(RunPlan plan, StationResponses responses) {
        double[] times = responses.responses().table().times();
        if (times[times.length - 1] < 2 * plan.description().endDay()) {
            return List.of();
        }
        RecoveryRuns runs = new RecoveryRuns(plan, responses);
        try {
            return runs.beside(new ArrayList<>(runs.takings().entrySet()))
                    .map(taking -> runs.of(taking.getKey(), taking.getValue(), times))
                    .flatMap(List::stream)
                    .toList();
        } catch (IllegalStateException rulesNotMet) {
            return List.of();
        }
    }

    /** Runs know nothing of each other, so they go on side by side where there are threads; the order stays. */
    private <T> Stream<T> beside(List<T> items) {
        return plan.settings().threads() > 1 ? items.parallelStream() : items.stream();
    }

    /** Bores that are ever operated, by the words for them. */
    private Map<String, BitSet> takings() {
        Map<String, BitSet> takings = new LinkedHashMap<>();
        BitSet proposed = new BitSet();
        BitSet all = new BitSet();
        List<Bore> bores = plan.problem().bores();
        for (int i = 0; i < bores.size(); i++) {
            boolean operated =
                    bores.get(i).phases().stream().anyMatch(phase -> !(phase.operation() instanceof Operation.Off));
            all.set(i, operated);
            proposed.set(i, operated && plan.description().bores().get(i).proposed());
        }
        if (!proposed.isEmpty()) {
            takings.put("proposed bores", proposed);
        }
        if (!all.equals(proposed)) {
            takings.put("all bores", all);
        }
        return takings;
    }

    private List<Recovery> of(String taking, BitSet bores, double[] times) {
        double stop = stopDay(bores);
        double[] days = days(stop, times[times.length - 1]);
        List<SuperposedRun> both = beside(List.of(
                        StoppedTaking.from(plan.problem(), bores, stop), StoppedTaking.always(plan.problem(), bores)))
                .map(problem -> run(problem, days))
                .toList();
        SuperposedRun stopped = both.get(0);
        SuperposedRun without = both.get(1);
        double error = stopped.estimatedError() + without.estimatedError();
        RecoveryAnalysis analysis = new RecoveryAnalysis(days, error);
        List<Station> stations = plan.description().stations();
        return IntStream.range(0, stations.size())
                .mapToObj(station ->
                        analysis.of(stations.get(station), taking, drawdown(station, days, stopped, without)))
                .toList();
    }

    /** The end of the run, or the day on which the last of the bores has been turned off before. */
    private double stopDay(BitSet bores) {
        return bores.stream()
                .mapToDouble(i -> {
                    List<OperatingPhase> phases = plan.problem().bores().get(i).phases();
                    OperatingPhase last = phases.get(phases.size() - 1);
                    boolean off = last.operation() instanceof Operation.Off;
                    return Math.max(0, off ? last.fromDay() : Double.POSITIVE_INFINITY);
                })
                .map(day -> Math.min(day, plan.description().endDay()))
                .max()
                .orElseThrow();
    }

    private static double[] days(double stop, double last) {
        double decades = Math.log10((last - stop) / FIRST_RECORD);
        int intervals = Math.max(1, (int) Math.ceil(RECORDS_PER_DECADE * decades));
        return DoubleStream.concat(
                        DoubleStream.of(stop),
                        IntStream.rangeClosed(0, intervals)
                                .mapToDouble(i -> i == intervals
                                        ? last
                                        : stop + FIRST_RECORD * Math.pow(10, decades * i / intervals)))
                .toArray();
    }

    private SuperposedRun run(FlowProblem problem, double[] days) {
        SuperposedRun run = plan.start() instanceof StartHeads.Steady steady
                ? SuperposedRun.fromSteady(problem, steady.problem(plan.problem()), responses, accuracy)
                : SuperposedRun.fromGiven(problem, responses, accuracy);
        run.run(days, days[days.length - 1]);
        return run;
    }

    private static double[] drawdown(int station, double[] days, SuperposedRun stopped, SuperposedRun without) {
        double[] with = heads(station, days, stopped);
        double[] drawdown = heads(station, days, without);
        Arrays.setAll(drawdown, k -> drawdown[k] - with[k]);
        return drawdown;
    }

    private static double[] heads(int station, double[] days, SuperposedRun run) {
        return run.states().stream()
                .filter(state -> state.day() >= days[0])
                .map(SuperposedState::head)
                .mapToDouble(head -> head[station])
                .toArray();
    }
}
