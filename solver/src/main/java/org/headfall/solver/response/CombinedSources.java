package org.headfall.solver.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.ChangingSource;
import org.headfall.solver.flow.ChangingSources;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.GivenRates;
import org.headfall.solver.flow.SourceReadings;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.simulation.Settings;

/**
 * What is needed to find heads at all bores, springs and points for one set of rates, with as few solves of the grid as will
 * do. Bores at given rates that change in proportion are one source ({@link GivenRates}), whose effect is read wherever it is
 * wanted; only bores and springs whose discharges follow head are sources of their own. Effects of single bores are not known.
 */
public final class CombinedSources {

    private static final int SHIFTS_PER_DECADE = 4;

    /**
     * Largest shift over the inverse of the shortest time at which heads are read. Largest error of 12 bores that take 1,000 m³/d
     * each (T of 250 m²/d) with 3, 10 and 30, read by months: 4, 1.7 and 0.2 mm.
     */
    private static final double FASTEST = 30;

    /** First time of responses over the shortest at which heads are read: where rates run straight what comes before counts too. */
    private static final double FIRST_TIME = 0.01;

    /** Shortest time that counts where discharges follow head, for these move all the time (d). */
    private static final double OF_FOLLOWING = 0.3;

    private final FlowProblem problem;
    private final List<ObservedHead> points;
    private final Optional<FlowProblem> atRest;
    private final double horizon;
    private final GivenRates given;
    private final int[] followers;
    private final List<GivenRates.Source> joined;
    private final List<ChangingSource> others;
    private final SourceReadings readings;
    private final double shortest;
    private final SourceResponses responses;
    private final SourceResponses ofHalfTheShifts;
    private final double[] atStart;

    /**
     * Finds the sources and solves for them.
     *
     * @param problem the problem
     * @param start what the run starts from
     * @param points points that take no water
     * @param given its given rates; bores that some run is made without are left out of it by kinds
     * @param leftOut for each kind, whether some run is made without it
     * @param readDays days on which heads are read (d), increasing; the last is the end of the run
     * @param settings accuracy and threads
     * @throws IllegalStateException if the start is to be steady and nothing ties heads down
     */
    public CombinedSources(
            FlowProblem problem,
            Start start,
            List<ObservedHead> points,
            GivenRates given,
            boolean[] leftOut,
            double[] readDays,
            Settings settings) {
        this.problem = problem;
        this.points = List.copyOf(points);
        atRest = start.atRest();
        horizon = readDays[readDays.length - 1];
        this.given = given;
        followers = followers();
        joined = given.sources().stream()
                .filter(source -> !source.givenBack() || leftOut[source.kind()])
                .toList();
        double[] heads = start.heads().orElseGet(() -> headsAtRest(settings));
        others = start.heads().isPresent()
                ? ChangingSources.afterGiven(problem, heads)
                : ChangingSources.afterSteady(problem);
        double untilRead = shortestTime(readDays);
        shortest = followers.length > 0 ? Math.min(untilRead, OF_FOLLOWING) : untilRead;
        readings = readings(settings);
        double[] times = ShiftLadder.times(FIRST_TIME * shortest, horizon);
        responses = new SourceResponses(readings, 1, times);
        ofHalfTheShifts = new SourceResponses(readings, 2, times);
        double[] rates = new double[problem.bores().size()];
        Arrays.setAll(rates, given::rateAtRest);
        atStart = new double[readings.places()];
        Arrays.setAll(atStart, place -> readings.headAt(place, heads) - readings.unresolved(place, rates));
    }

    /**
     * What a run starts from: heads at rest with some operations, or given heads.
     *
     * @param atRest the problem with the operations in force on day 0 that had brought about a start at rest
     * @param heads head of each cell (m above datum), if they are given
     */
    public record Start(Optional<FlowProblem> atRest, Optional<double[]> heads) {

        /** Heads at rest. */
        public static Start fromSteady(FlowProblem atRest) {
            return new Start(Optional.of(atRest), Optional.empty());
        }

        /** Given heads (m above datum). */
        public static Start fromGiven(double[] heads) {
            return new Start(Optional.empty(), Optional.of(heads));
        }
    }

    /** Bores and springs whose discharge follows head. */
    private int[] followers() {
        int[] bores = given.bores();
        return IntStream.range(0, problem.bores().size() + problem.springs().size())
                .filter(point -> Arrays.binarySearch(bores, point) < 0)
                .toArray();
    }

    /** Steady heads with the given rates before the start, and without what follows head (m above datum). */
    private double[] headsAtRest(Settings settings) {
        List<Bore> resting = atRest.orElseThrow().bores();
        return StationResponses.headsAtRest(
                problem, Arrays.stream(given.bores()).mapToObj(resting::get).toList(), settings);
    }

    /** Shortest time between a change and a later day on which heads are read (d). */
    private double shortestTime(double[] readDays) {
        TreeSet<Double> changes = new TreeSet<>();
        changes.add(0.0);
        DoubleStream.of(given.changes()).forEach(changes::add);
        others.forEach(source -> DoubleStream.of(source.changes(horizon)).forEach(changes::add));
        TreeSet<Double> read = new TreeSet<>(changes);
        DoubleStream.of(readDays).forEach(read::add);
        return changes.stream().mapToDouble(day -> read.higher(day) - day).min().orElse(horizon);
    }

    private SourceReadings readings(Settings settings) {
        double[] shifts = ShiftLadder.until(FASTEST / shortest, horizon, SHIFTS_PER_DECADE);
        boolean steady = followers.length > 0 && atRest.isPresent();
        try (WorkerTeam team = new WorkerTeam(settings.threads())) {
            return new SourceReadings(given, points, allSources(), shifts, steady, team);
        }
    }

    /** Those that follow head, then bores at given rates, then what else moves heads. */
    private List<SourceReadings.Source> allSources() {
        List<SourceReadings.Source> all = new ArrayList<>(SourceReadings.ofPoints(given, followers));
        for (GivenRates.Source source : joined) {
            double perUnit = -1 / source.inflow().scale();
            double[] discharges = Arrays.stream(source.strengths())
                    .map(rate -> perUnit * rate)
                    .toArray();
            all.add(new SourceReadings.Source(source.inflow().shares(), discharges));
        }
        others.forEach(source -> all.add(new SourceReadings.Source(source.shares(), new double[0])));
        return all;
    }

    /** How many sources take given rates or are no bores and springs, and so were put together as far as they can be. */
    public int joinedSources() {
        return joined.size() + others.size();
    }

    /** How many bores and springs follow head. */
    public int followingSources() {
        return followers.length;
    }

    /**
     * The run.
     *
     * @param readDays the days on which heads are read, as they were told before
     * @param accuracy accuracy of head wanted where discharges follow head (m)
     * @return the run
     * @throws IllegalStateException if the rules of bores and springs cannot be met
     */
    public CombinedRun run(double[] readDays, double accuracy) {
        return runWithout(new boolean[0], readDays, accuracy);
    }

    /**
     * The run from the same start without some bores, which take nothing from then on.
     *
     * @param kinds for each kind of bores, whether it is left out; fewer if the others are not
     * @param readDays the days on which heads are read, as they were told before
     * @param accuracy accuracy of head wanted where discharges follow head (m)
     * @return the run
     * @throws IllegalStateException if the rules of bores and springs cannot be met
     */
    public CombinedRun runWithout(boolean[] kinds, double[] readDays, double accuracy) {
        List<ChangingSource> inflows = new ArrayList<>();
        List<Integer> sources = new ArrayList<>();
        for (int i = 0; i < joined.size(); i++) {
            GivenRates.Source source = joined.get(i);
            boolean out = source.kind() < kinds.length && kinds[source.kind()];
            if (out == source.givenBack()) {
                inflows.add(out ? reversed(source.inflow()) : source.inflow());
                sources.add(followers.length + i);
            }
        }
        for (int i = 0; i < others.size(); i++) {
            inflows.add(others.get(i));
            sources.add(followers.length + joined.size() + i);
        }
        Sources chosen = new Sources(
                inflows, sources.stream().mapToInt(Integer::intValue).toArray());
        return new CombinedRun(this, chosen, kinds, readDays, accuracy);
    }

    private static ChangingSource reversed(ChangingSource source) {
        return new ChangingSource(
                source.name(), source.shares(), -source.scale(), source.schedule(), source.reference());
    }

    /** What moves heads in a run besides what follows head: the inflows, and their places among all sources. */
    @SuppressWarnings("ArrayRecordComponent") // handed on once, never compared
    record Sources(List<ChangingSource> inflows, int[] numbers) {}

    FlowProblem problem() {
        return problem;
    }

    Optional<FlowProblem> atRest() {
        return atRest;
    }

    GivenRates given() {
        return given;
    }

    int[] following() {
        return followers;
    }

    SourceReadings readings() {
        return readings;
    }

    double horizon() {
        return horizon;
    }

    /** Bores and springs that follow head, then all other places. */
    int[] places() {
        return IntStream.concat(
                        IntStream.of(followers),
                        IntStream.range(0, readings.places())
                                .filter(place -> Arrays.binarySearch(followers, place) < 0))
                .toArray();
    }

    /** Heads without what follows head, at places in some order. */
    UndisturbedHeads undisturbed(Sources sources, int[] places) {
        return undisturbed(sources, places, responses);
    }

    /** The same, less exactly: from models of half of the shifts. */
    UndisturbedHeads undisturbedByHalf(Sources sources, int[] places) {
        return undisturbed(sources, places, ofHalfTheShifts);
    }

    private UndisturbedHeads undisturbed(Sources sources, int[] places, SourceResponses from) {
        double[] start =
                Arrays.stream(places).mapToDouble(place -> atStart[place]).toArray();
        return new UndisturbedHeads(start, sources.inflows(), from.table(sources.numbers(), places), horizon);
    }

    /** Responses to what follows head, at places in some order, in which it comes first. */
    UnitResponses ofFollowers(int[] places) {
        int[] causes = IntStream.range(0, followers.length).toArray();
        Optional<double[]> steady = Optional.empty();
        if (atRest.isPresent()) {
            double[] values = new double[causes.length * places.length];
            Arrays.setAll(values, curve -> {
                int cause = curve / places.length;
                int place = places[curve % places.length];
                return readings.atOnce(place, cause) + readings.steady(place, cause);
            });
            steady = Optional.of(values);
        }
        return new UnitResponses(responses.table(causes, places), steady);
    }

    /** Difference that half of the shifts make to the response to one that follows head, anywhere at any time that counts (d/m²). */
    double differenceByHalf(int follower) {
        return responses.largestDifference(ofHalfTheShifts, follower, shortest);
    }
}
