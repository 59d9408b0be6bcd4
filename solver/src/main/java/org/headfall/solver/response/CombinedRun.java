package org.headfall.solver.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.GivenRates;
import org.headfall.solver.flow.PointRules;
import org.headfall.solver.flow.RateHistory;

/**
 * A run found from {@link CombinedSources}. Where nothing follows head it is a sum of responses; otherwise bores and springs
 * that follow head meet their rules together ({@link SuperposedRun}) in the heads that all others leave them. Bores at given
 * rates are taken to get them; whether one would have to take less to keep its lowest level is found out afterwards, on the
 * days that are read and wherever rates, boundaries or recharge jump or bend.
 */
public final class CombinedRun {

    /**
     * Share of the difference between models of all and of half of the shifts that the error is taken for. Found was 0.03
     * to 0.05 against responses of second order (see its test), and 0.03 to 0.26 against simulations, whose own error of 0.1 to
     * 0.2 mm is in that.
     */
    private static final double SHARE_OF_DIFFERENCE = 0.25;

    private final CombinedSources sources;
    private final FlowProblem problem;
    private final GivenRates given;
    private final PointRules rules;
    private final double[] changes;
    private final boolean[] leftOut;
    private final int[] places;
    private final List<SuperposedState> states = new ArrayList<>();
    private final RateHistory history;
    private final double error;
    private String unmet = "";

    CombinedRun(
            CombinedSources sources,
            CombinedSources.Sources chosen,
            boolean[] kindsLeftOut,
            double[] readDays,
            double accuracy) {
        this.sources = sources;
        problem = sources.problem();
        given = sources.given();
        changes = given.changes();
        rules = new PointRules(problem);
        leftOut = new boolean[problem.bores().size()];
        for (int bore = 0; bore < leftOut.length; bore++) {
            leftOut[bore] = given.isOfKinds(bore, kindsLeftOut);
        }
        places = sources.places();
        history = new RateHistory(leftOut.length + problem.springs().size(), 0);
        UndisturbedHeads heads = sources.undisturbed(chosen, places);
        double[] days = daysToLookAt(heads, readDays);
        double inFollowing = 0;
        if (sources.followingSources() == 0) {
            sumUp(heads, days, readDays);
        } else {
            inFollowing = follow(heads, days, readDays, accuracy);
        }
        error = inFollowing
                + SHARE_OF_DIFFERENCE * difference(heads, sources.undisturbedByHalf(chosen, places), readDays);
    }

    /** Days after the start that are asked for, and all on which rates, boundaries or recharge jump or bend: levels turn there. */
    private double[] daysToLookAt(UndisturbedHeads heads, double[] readDays) {
        double horizon = sources.horizon();
        return Stream.of(readDays, changes, heads.jumps(horizon), heads.bends(horizon))
                .flatMapToDouble(DoubleStream::of)
                .filter(day -> day > 0)
                .sorted()
                .distinct()
                .toArray();
    }

    private static double difference(UndisturbedHeads heads, UndisturbedHeads byHalf, double[] days) {
        double largest = 0;
        for (double day : days) {
            double[] one = heads.on(day);
            double[] other = byHalf.on(day);
            for (int place = 0; place < one.length; place++) {
                largest = Math.max(largest, Math.abs(one[place] - other[place]));
            }
        }
        return largest;
    }

    /** A run in which nothing follows head. */
    private void sumUp(UndisturbedHeads heads, double[] days, double[] readDays) {
        double[] none = new double[history.points()];
        start(heads.atStart(), none, none);
        double former = 0;
        for (double day : days) {
            record(former, day, former == 0 || isChange(former), none, none);
            keep(day, heads.on(day), none, none, readDays);
            former = day;
        }
    }

    private boolean isChange(double day) {
        return Arrays.binarySearch(changes, day) >= 0;
    }

    /** A run in which some discharges follow head; gives the error that comes from these. */
    private double follow(UndisturbedHeads heads, double[] days, double[] readDays, double accuracy) {
        StationResponses responses = new StationResponses(sources.ofFollowers(places), heads);
        FlowProblem following = given.withoutThem(problem);
        SuperposedRun run = sources.atRest().isPresent()
                ? SuperposedRun.fromSteady(
                        following.withBores(operated(following.bores())),
                        given.withoutThem(sources.atRest().get()),
                        responses,
                        accuracy)
                : SuperposedRun.fromGiven(following.withBores(operated(following.bores())), responses, accuracy);
        run.run(days, sources.horizon());
        RateHistory found = run.history();
        double[] mean = new double[history.points()];
        double[] last = new double[history.points()];
        double[] moved = new double[sources.followingSources()];
        double[] first = run.states().get(0).discharge();
        double[] from = sources.atRest().isPresent() ? first : new double[moved.length];
        for (int step = 0; step < found.steps(); step++) {
            for (int i = 0; i < moved.length; i++) {
                mean[sources.following()[i]] = found.rate(step, i);
                last[sources.following()[i]] = found.rateAtEnd(step, i);
                moved[i] = Math.max(moved[i], Math.abs(found.rateAtEnd(step, i) - from[i]));
            }
            record(found.startOf(step), found.startOf(step + 1), found.startsAnew(step), mean, last);
        }
        start(
                run.states().get(0).head(),
                ofFollowers(first),
                ofFollowers(run.states().get(0).asked()));
        for (SuperposedState state : run.states().subList(1, run.states().size())) {
            keep(state.day(), state.head(), ofFollowers(state.discharge()), ofFollowers(state.asked()), readDays);
        }
        double off = 0;
        for (int i = 0; i < moved.length; i++) {
            off += SHARE_OF_DIFFERENCE * moved[i] * sources.differenceByHalf(i);
        }
        return run.estimatedError() + off;
    }

    /** Bores that follow head, those that are left out shut from the start on. */
    private List<Bore> operated(List<Bore> following) {
        List<Bore> bores = new ArrayList<>();
        for (Bore bore : following) {
            bores.add(leftOut[problem.bores().indexOf(bore)] ? bore.withPhases(List.of()) : bore);
        }
        return bores;
    }

    private double[] ofFollowers(double[] discharge) {
        double[] all = new double[history.points()];
        for (int i = 0; i < discharge.length; i++) {
            all[sources.following()[i]] = discharge[i];
        }
        return all;
    }

    private double rate(int bore, double day) {
        return leftOut[bore] ? 0 : given.rate(bore, day);
    }

    /** The state at the start, as bores were operated until then. */
    private void start(double[] heads, double[] ofFollowers, double[] askedOfFollowers) {
        double[] head = inOrder(heads);
        double[] discharge = ofFollowers.clone();
        double[] asked = askedOfFollowers.clone();
        double[] before = new double[leftOut.length];
        for (int bore : given.bores()) {
            discharge[bore] =
                    sources.atRest().isPresent() ? given.rateAtRest(bore) : given.rate(bore, Math.nextDown(0.0));
            asked[bore] = discharge[bore];
            before[bore] = discharge[bore] - given.rateAtRest(bore);
        }
        Arrays.setAll(head, place -> head[place] - sources.readings().unresolved(place, before));
        states.add(state(0, head, discharge, asked));
        lookAfter(states.get(0));
    }

    /** Keeps a state if it is asked for, and looks whether lowest levels are kept in it and after what changes then. */
    private void keep(double day, double[] heads, double[] ofFollowers, double[] askedOfFollowers, double[] readDays) {
        double[] discharge = ofFollowers.clone();
        double[] asked = askedOfFollowers.clone();
        double moment = Math.nextDown(day);
        for (int bore : given.bores()) {
            discharge[bore] = rate(bore, moment);
            asked[bore] = discharge[bore];
        }
        SuperposedState state = state(day, inOrder(heads), discharge, asked);
        look(state, moment, state.head(), discharge);
        if (isChange(day)) {
            lookAfter(state);
        }
        if (Arrays.binarySearch(readDays, day) >= 0) {
            states.add(state);
        }
    }

    private SuperposedState state(double day, double[] head, double[] discharge, double[] asked) {
        double[] level = new double[leftOut.length];
        Arrays.setAll(level, bore -> rules.levelInBore(bore, head[bore], discharge[bore]));
        return new SuperposedState(day, head, discharge, asked, level);
    }

    private double[] inOrder(double[] heads) {
        double[] ordered = new double[heads.length];
        for (int i = 0; i < heads.length; i++) {
            ordered[places[i]] = heads[i];
        }
        return ordered;
    }

    /** Right after a change heads near bores have moved by what the grid does not carry. */
    private void lookAfter(SuperposedState state) {
        double[] discharge = state.discharge().clone();
        double[] change = new double[leftOut.length];
        for (int bore : given.bores()) {
            discharge[bore] = rate(bore, state.day());
            change[bore] = discharge[bore] - state.discharge()[bore];
        }
        double[] head = state.head().clone();
        Arrays.setAll(head, place -> head[place] - sources.readings().unresolved(place, change));
        look(state, state.day(), head, discharge);
    }

    private void look(SuperposedState state, double moment, double[] head, double[] discharge) {
        for (int bore : given.bores()) {
            OptionalDouble lowest = leftOut[bore] ? OptionalDouble.empty() : given.lowestLevel(bore, moment);
            if (lowest.isPresent()
                    && rules.levelInBore(bore, head[bore], discharge[bore]) < lowest.getAsDouble()
                    && unmet.isEmpty()) {
                unmet = "'" + problem.bores().get(bore).name() + "' would fall below its lowest level on day "
                        + Math.round(state.day());
            }
        }
    }

    private void record(double from, double to, boolean anew, double[] mean, double[] last) {
        double[] means = mean.clone();
        double[] ends = last.clone();
        for (int bore : given.bores()) {
            ends[bore] = rate(bore, Math.nextDown(to));
            means[bore] = 0.5 * (rate(bore, from) + ends[bore]);
        }
        double[] heads = new double[means.length];
        Arrays.fill(heads, Double.NaN);
        history.add(to, anew, means, ends, heads);
    }

    /** States at the start and on the days that were asked for. */
    public List<SuperposedState> states() {
        return List.copyOf(states);
    }

    /** Discharges of all bores and springs. */
    public RateHistory history() {
        return history;
    }

    /**
     * Error of head as estimated (m): a quarter of the difference between heads from models of all shifts and of every second
     * one, and what {@link SuperposedRun#estimatedError} adds where discharges follow head. An estimate, no bound.
     */
    public double estimatedError() {
        return error;
    }

    /** Why the run is not as it is given here: a bore could not get its rate; absent if all do. */
    public Optional<String> unmetRule() {
        return unmet.isEmpty() ? Optional.empty() : Optional.of(unmet);
    }
}
