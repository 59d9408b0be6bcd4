package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.headfall.scenarios.findings.Recoveries;
import org.headfall.scenarios.findings.Recovery;
import org.headfall.scenarios.findings.RecoveryAnalysis;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.ReportDate;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.UnmetRuleException;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.response.SuperposedRun;
import org.headfall.solver.response.SuperposedState;
import org.headfall.solver.response.SuperpositionException;

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
    private final Recording recording;
    private final Optional<SuperposedRun> answered;
    private final double accuracy;

    private RecoveryRuns(
            RunPlan plan, StationResponses responses, Recording recording, Optional<SuperposedRun> answered) {
        this.plan = plan;
        this.responses = responses;
        this.recording = recording;
        this.answered = answered;
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
     * @param recording what the run recorded, which recovery by superposition is held against
     * @param answered the run by superposition, from whose end recovery goes on where taking stops then; not changed
     * @return a line a taking and station; none, and the reason, of what responses that end with the run cannot say, or where
     *     the rules of the bores and springs cannot be met so
     */
    static Recoveries of(
            RunPlan plan, StationResponses responses, Recording recording, Optional<SuperposedRun> answered) {
        double[] times = responses.responses().table().times();
        RecoveryRuns runs = new RecoveryRuns(plan, responses, recording, answered);
        if (times[times.length - 1] < 2 * plan.description().endDay()) {
            return new Recoveries(
                    List.of(),
                    runs.takings().keySet().stream()
                            .map(taking -> missing(taking, "the unit responses end before twice the period of the run"))
                            .toList());
        }
        return runs.beside(new ArrayList<>(runs.takings().entrySet()))
                .map(taking -> runs.of(taking.getKey(), taking.getValue(), times))
                .reduce(Recoveries.NONE, Recoveries::and);
    }

    private static String missing(String taking, String reason) {
        return "How places recover when the taking of " + taking + " stops: " + reason + ".";
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

    private Recoveries of(String taking, BitSet bores, double[] times) {
        try {
            return new Recoveries(lines(taking, bores, times), List.of());
        } catch (UnmetRuleException | SuperpositionException known) {
            return new Recoveries(
                    List.of(), List.of(missing(taking, "superposition cannot answer it, " + known.getMessage())));
        }
    }

    private List<Recovery> lines(String taking, BitSet bores, double[] times) {
        double stop = stopDay(bores);
        double[] days = days(stop, times[times.length - 1]);
        List<SuperposedRun> both = beside(List.<Supplier<SuperposedRun>>of(
                        () -> stopped(StoppedTaking.from(plan.problem(), bores, stop), days),
                        () -> run(StoppedTaking.always(plan.problem(), bores), days)))
                .map(Supplier::get)
                .toList();
        SuperposedRun stopped = both.get(0);
        SuperposedRun without = both.get(1);
        double estimated = stopped.estimatedError() + without.estimatedError();
        RecoveryAnalysis analysis = new RecoveryAnalysis(days);
        List<Station> stations = plan.description().stations();
        return IntStream.range(0, stations.size())
                .mapToObj(station -> {
                    double[] drawdown = drawdown(station, days, stopped, without);
                    double error = estimated + leap(drawdown) + differenceToTheRun(station, stopped);
                    return analysis.of(stations.get(station), taking, drawdown, error);
                })
                .toList();
    }

    /**
     * Growth of drawdown in the first moment after the stop (m): in truth there is none, but the grid spreads what a bore
     * gives back over some cells at once.
     */
    private static double leap(double[] drawdown) {
        return Math.max(0, drawdown[1] - drawdown[0]);
    }

    /** Largest difference of head at a station to that of the run itself (m), before taking stops. */
    private double differenceToTheRun(int station, SuperposedRun stopped) {
        StationSeries run = recording.series().get(station);
        double largest = 0;
        for (SuperposedState state : stopped.states()) {
            if (Arrays.binarySearch(recording.days(), state.day()) >= 0) {
                largest = Math.max(largest, Math.abs(state.head()[station] - run.headAt(state.day())));
            }
        }
        return largest;
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

    /** Dates before the stop, on which the run can be compared, and the days after it. */
    private double[] withReportDates(double[] days) {
        return DoubleStream.concat(
                        plan.description().reportDates().stream()
                                .mapToDouble(ReportDate::day)
                                .filter(day -> day > 0 && day < days[0]),
                        DoubleStream.of(days))
                .sorted()
                .toArray();
    }

    private SuperposedRun stopped(FlowProblem problem, double[] days) {
        if (answered.isEmpty() || days[0] < plan.description().endDay()) {
            return run(problem, withReportDates(days));
        }
        SuperposedRun run = answered.get().goOnWith(problem);
        run.run(Arrays.copyOfRange(days, 1, days.length), days[days.length - 1]);
        return run;
    }

    private SuperposedRun run(FlowProblem problem, double[] days) {
        SuperposedRun run = plan.start().superposed(plan.problem(), problem, responses, accuracy);
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
