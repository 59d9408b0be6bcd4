package org.headfall.solver.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.FlowSystem;
import org.headfall.solver.flow.PointRules;
import org.headfall.solver.flow.RateHistory;

/**
 * A run found without the grid, by superposition of unit responses on the heads without bores and springs. Given rates
 * are superposed as they are. Discharges that follow head (free flow, pumps by their curve or at their lowest level,
 * springs) meet their rules at the end of every step, together, and run straight between; steps are as long as the bend of
 * these discharges allows.
 *
 * <p>Exact but for the responses, for taking those discharges as straight, and for the tolerance of their rules; see
 * {@link #estimatedError}.
 */
public final class SuperposedRun {

    /** Share of the accuracy wanted that the steps may take in all. */
    private static final double STEP_SHARE = 0.1;

    /** Error that steps may always make (m): responses err by more, and steps would follow their rounding. */
    private static final double LEAST_STEP_ERROR = 1e-6;

    /** More than any field needs whose rules hold for a while; rules that never settle would take for ever. */
    private static final int MOST_STEPS = 200_000;

    /** Share of a rate by which what is taken may miss it by rounding (-). */
    private static final double ROUNDING = 1e-12;

    private final FlowProblem problem;
    private final PointRules rules;
    private final UndisturbedHeads undisturbed;
    private final Superposition superposition;
    private final RulesMet rulesMet;
    private final StepLengths lengths;
    private final int points;
    private final SuperposedStart start;
    private final SuperpositionError error;
    private final double[] largestEffect;
    private final List<SuperposedState> states = new ArrayList<>();
    private final RateHistory history;
    private double[] discharge;
    private double[] slope;

    /** Whether the discharge of a point depends on head, and head was high enough for all that is asked of it. */
    private final boolean[] takesAllAsked;

    private double day;

    /**
     * A run that starts from rest.
     *
     * @param problem what is run
     * @param atRest the same problem with the operations that had brought about the start, in force on day 0
     * @param responses responses of the problem
     * @param accuracy accuracy of head wanted (m)
     * @return the run at its start
     * @throws IllegalStateException if the rules cannot be met
     */
    public static SuperposedRun fromSteady(
            FlowProblem problem, FlowProblem atRest, StationResponses responses, double accuracy) {
        return new SuperposedRun(problem, responses, accuracy, Optional.of(atRest));
    }

    /**
     * A run that starts from given heads.
     *
     * @param problem what is run; the state at the start is that of the moment before day 0
     * @param responses responses of the problem from these heads
     * @param accuracy accuracy of head wanted (m)
     * @return the run at its start
     * @throws IllegalStateException if the rules cannot be met
     */
    public static SuperposedRun fromGiven(FlowProblem problem, StationResponses responses, double accuracy) {
        return new SuperposedRun(problem, responses, accuracy, Optional.empty());
    }

    private SuperposedRun(
            FlowProblem problem, StationResponses station, double accuracy, Optional<FlowProblem> atRest) {
        this.problem = problem;
        rules = new PointRules(problem);
        undisturbed = station.undisturbed();
        SharedModes modes = station.responses().modes();
        superposition = new Superposition(modes);
        double tolerance = FlowSystem.ruleTolerance(accuracy);
        rulesMet = new RulesMet(rules, superposition, tolerance);
        lengths = new StepLengths(Math.max(LEAST_STEP_ERROR, STEP_SHARE * accuracy));
        points = modes.causes();
        history = new RateHistory(points, 0);
        largestEffect = station.responses().table().largestEffects();
        start = atRest.isPresent()
                ? SuperposedStart.atRest(atRest.get(), station, tolerance)
                : SuperposedStart.given(problem, station, tolerance);
        error = new SuperpositionError(modes, largestEffect, start.reference(), tolerance);
        if (start.metRules()) {
            error.meetRules();
        }
        discharge = start.state().discharge().clone();
        slope = new double[points];
        takesAllAsked = new boolean[points];
        states.add(start.state());
    }

    private SuperposedRun(SuperposedRun earlier, FlowProblem problem) {
        this.problem = problem;
        rules = new PointRules(problem);
        undisturbed = earlier.undisturbed;
        superposition = earlier.superposition.copy();
        rulesMet = earlier.rulesMet.of(rules, superposition);
        lengths = earlier.lengths.copy();
        points = earlier.points;
        day = earlier.day;
        history = new RateHistory(points, day);
        largestEffect = earlier.largestEffect;
        start = earlier.start;
        error = earlier.error.copy();
        discharge = earlier.discharge.clone();
        slope = earlier.slope.clone();
        takesAllAsked = earlier.takesAllAsked.clone();
        states.add(earlier.now());
    }

    /**
     * A run that goes on from where this one has come to, with other operations from then on. Its history and its states
     * begin there; its error counts what was before.
     *
     * @param changed the problem with other operations of the same bores
     * @return the run, before its first step
     */
    public SuperposedRun goOnWith(FlowProblem changed) {
        return new SuperposedRun(this, changed);
    }

    /**
     * Runs on from where the run has come to, at first from its start.
     *
     * @param recordDays days to record, increasing, later than that
     * @param toDay day of the end (d), within the time for which responses are known
     * @throws org.headfall.solver.flow.UnmetRuleException if the rules cannot be met
     * @throws TooManyStepsException if discharges change too often
     */
    public void run(double[] recordDays, double toDay) {
        StopDays stops = StopDays.of(problem, undisturbed, recordDays, day, toDay);
        boolean anew = true;
        lengths.startAnew();
        for (double stop : stops.all()) {
            while (day < stop) {
                double end = stop - day <= lengths.next(stop - day) ? stop : day + lengths.next(stop - day);
                if (step(end, anew)) {
                    day = end;
                    anew = false;
                }
            }
            if (Arrays.binarySearch(recordDays, day) >= 0) {
                states.add(now());
            }
            if (stops.jumpsOn(day)) {
                anew = true;
                lengths.startAnew();
            } else if (stops.bendsOn(day)) {
                lengths.bend();
            }
        }
    }

    /** One step; false if it was too long. */
    private boolean step(double end, boolean anew) {
        if (history.steps() >= MOST_STEPS) {
            throw new TooManyStepsException(MOST_STEPS, day);
        }
        double length = end - day;
        double moment = Math.nextDown(end);
        boolean[] depend = rules.dependOnHead(moment);
        int[] following = IntStream.range(0, points).filter(i -> depend[i]).toArray();
        double[] begin = anew ? rules.asked(day) : discharge.clone();
        double[] asked = rules.asked(moment);
        double[] known = asked.clone();
        for (int point : following) {
            if (!Double.isNaN(asked[point]) && (anew || takesAllAsked[point])) {
                // Given rates run straight within a step, so what a bore takes that gets all it asks for has no bend.
                continue;
            }
            // Where the past tells nothing the answer is sought from there.
            double guess = discharge[point] + (anew ? 0 : slope[point] * length);
            begin[point] = discharge[point];
            known[point] = guess;
        }
        superposition.lookAhead(length, changes(begin), changes(known));
        double[] head = wallHeads(end, following);
        double[] assumed = Arrays.stream(following).mapToDouble(i -> known[i]).toArray();
        double[] further = rulesMet.further(moment, following, anew, assumed, head);
        double off = lengths.knowsSlope() ? bentBy(following, further, length) : 0;
        if (!lengths.accept(off, length)) {
            return false;
        }
        if (following.length > 0) {
            error.meetRules();
        }
        for (int i = 0; i < following.length; i++) {
            known[following[i]] += further[i];
            begin[following[i]] += anew ? further[i] : 0;
            superposition.addToLook(following[i], further[i], anew);
            takesAllAsked[following[i]] = known[following[i]] >= asked[following[i]] * (1 - ROUNDING);
        }
        error.step(off, known);
        advance(end, anew, begin, known, ofPoints(following, head));
        return true;
    }

    /** Heads at the walls of some points at the end of the step last looked at. */
    private double[] wallHeads(double end, int[] following) {
        double[] base = undisturbed.on(end, following);
        double[] drawdown = superposition.drawdowns(following);
        double[] head = new double[following.length];
        for (int i = 0; i < following.length; i++) {
            int point = following[i];
            head[i] = base[i] - start.drawdown()[point] - drawdown[i];
        }
        return head;
    }

    /** Effect anywhere of taking the discharges that follow head as straight in a step (m). */
    private double bentBy(int[] following, double[] off, double length) {
        double largest = 0;
        for (int i = 0; i < following.length; i++) {
            largest += largestEffect[following[i]] * lengths.distance(off[i], length);
        }
        return largest;
    }

    private void advance(double end, boolean anew, double[] begin, double[] atEnd, double[] wallHeads) {
        superposition.accept();
        double[] mean = new double[points];
        for (int i = 0; i < points; i++) {
            slope[i] = (atEnd[i] - begin[i]) / (end - day);
            mean[i] = 0.5 * (begin[i] + atEnd[i]);
        }
        discharge = atEnd;
        history.add(end, anew, mean, atEnd, wallHeads);
    }

    /** Heads at the walls of all points; no one asks for those whose discharge does not follow them. */
    private double[] ofPoints(int[] following, double[] head) {
        double[] all = new double[points];
        Arrays.fill(all, Double.NaN);
        for (int i = 0; i < following.length; i++) {
            all[following[i]] = head[i];
        }
        return all;
    }

    private double[] changes(double[] rates) {
        double[] changes = rates.clone();
        Arrays.setAll(changes, i -> rates[i] - start.reference()[i]);
        return changes;
    }

    private double[] headAt(double[] drawdown) {
        double[] head = undisturbed.on(day);
        Arrays.setAll(head, receptor -> head[receptor] - start.drawdown()[receptor] - drawdown[receptor]);
        return head;
    }

    /** The state the run has come to, before any jump there. */
    private SuperposedState now() {
        return SuperposedState.of(
                rules, problem.bores().size(), Math.nextDown(day), day, headAt(superposition.drawdowns()), discharge);
    }

    /** States at the start and on the recorded days so far. */
    public List<SuperposedState> states() {
        return List.copyOf(states);
    }

    /** Discharges of all steps, and heads at their ends at the walls of points whose discharge follows them. */
    public RateHistory history() {
        return history;
    }

    /**
     * Bound of the error of head that taking responses as sums of shared modes makes.
     *
     * @param moved largest change of the discharge of any bore or spring since the start; its discharge itself, if heads at
     *     the start are given (m³/d)
     * @return the bound (m)
     */
    public double errorWhenMovedBy(double moved) {
        return error.ofModes(endDay(), moved);
    }

    /**
     * Error of head by what is this way's alone (m): discharges that follow head taken as straight, as if every step had
     * erred the same way by as much as the worst; responses taken as sums of shared modes; and, where some discharge has
     * followed head, what its rule may be missed by ({@link FlowSystem#ruleTolerance}). A bound as far as steps are concerned;
     * what the responses themselves are off by is not in it ({@link #errorOfResponses()}).
     */
    public double estimatedError() {
        return error.until(endDay());
    }

    /**
     * Error of head by what the responses themselves are off by (m), an estimate: of each the millionth part of the largest
     * effect of its cause, as found against simulations, as if those of all causes went the same way.
     */
    public double errorOfResponses() {
        return error.ofResponses();
    }

    /**
     * The same for another run.
     *
     * @param moved largest change of the discharge of any bore or spring, as for {@link #errorWhenMovedBy}
     * @return the error (m)
     */
    public double errorOfResponsesWhenMovedBy(double moved) {
        return error.ofResponses(moved);
    }

    /** Whether the discharge of a bore or spring has followed head at any time so far, the start included. */
    public boolean followsHead() {
        return error.hasMetRules();
    }

    /** Responses may be known for longer. */
    private double endDay() {
        return history.startOf(history.steps());
    }
}
