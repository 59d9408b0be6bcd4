package org.headfall.solver.response;

import java.util.Arrays;
import java.util.BitSet;
import java.util.stream.IntStream;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.FlowSystem;
import org.headfall.solver.flow.PointRules;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.wording.PlainNumber;

/**
 * What a run would have given had some bores never been operated, without running it: by superposition on the run as it
 * was. The water that those bores took is given back by its responses; springs, free-flowing bores and pumps at their
 * lowest level then give more, and how much follows from their rules, met together at the end of every step of the run.
 * Their change of discharge is straight within a step, or constant in the short step after a jump.
 *
 * <p>Exact but for the interpolation of responses and of these changes: all that does not follow head is linear.
 */
public final class RunWithout {

    private final PointRules rules;
    private final Superposition superposition;
    private final RateHistory history;
    private final BitSet shut;
    private final RulesMet rulesMet;
    private final int points;

    /** Change of discharge of each point at the end of each step (m³/d). */
    private final double[][] change;

    /** How much higher head is at each receptor at the end of each step that ends on a day wanted (m). */
    private final double[][] rise;

    /**
     * Superposes.
     *
     * @param problem the problem that was run
     * @param responses its responses, up to the end of the run
     * @param history discharges and heads of the run
     * @param shut bores that are never operated, by their place in the problem
     * @param accuracy accuracy of head wanted of a step of the run (m); the rules are met as closely as there
     * @param days days on which heads are wanted (d), ends of steps, increasing
     * @throws IllegalStateException if the rules cannot be met
     */
    public RunWithout(
            FlowProblem problem,
            UnitResponses responses,
            RateHistory history,
            BitSet shut,
            double accuracy,
            double[] days) {
        this.rules = new PointRules(problem);
        superposition = new Superposition(responses.modes());
        this.history = history;
        this.shut = (BitSet) shut.clone();
        rulesMet = new RulesMet(rules, superposition, FlowSystem.ruleTolerance(accuracy));
        int steps = history.steps();
        points = history.points();
        change = new double[steps][];
        rise = new double[steps][];
        double[] former = new double[points];
        for (int step = 0; step < steps; step++) {
            superpose(step, former);
            former = change[step];
            boolean wanted = Arrays.binarySearch(days, history.startOf(step + 1)) >= 0;
            rise[step] = wanted ? rises() : new double[0];
        }
    }

    /**
     * One step: the past and the shut bores first, then the discharges that meet the rules at its end.
     *
     * @param former change of discharge at the end of the step before (m³/d)
     */
    private void superpose(int step, double[] former) {
        double end = history.startOf(step + 1);
        double length = end - history.startOf(step);
        double moment = Math.nextDown(end);
        boolean anew = history.startsAnew(step);
        int[] following = following(moment);
        double[] begin = new double[points];
        double[] known = new double[points];
        for (int i = shut.nextSetBit(0); i >= 0; i = shut.nextSetBit(i + 1)) {
            known[i] = -history.straightenedRateAtEnd(step, i);
            begin[i] = anew ? known[i] : former[i];
        }
        if (!anew) {
            for (int point : following) {
                begin[point] = former[point];
                known[point] = former[point];
            }
        }
        superposition.lookAhead(length, begin, known);
        double[] further = furtherChange(step, moment, following, known);
        for (int i = 0; i < following.length; i++) {
            known[following[i]] += further[i];
            superposition.addToLook(following[i], further[i], anew);
        }
        superposition.accept();
        change[step] = known;
    }

    private double[] rises() {
        return Arrays.stream(superposition.drawdowns()).map(s -> -s).toArray();
    }

    private int[] following(double moment) {
        boolean[] depend = rules.dependOnHead(moment);
        return IntStream.range(0, points).filter(i -> depend[i] && !shut.get(i)).toArray();
    }

    /** Change of discharge of the following points beyond what is known, so that they meet their rules. */
    private double[] furtherChange(int step, double moment, int[] following, double[] known) {
        double[] discharge = new double[following.length];
        double[] fall = superposition.drawdowns(following);
        double[] head = new double[following.length];
        for (int i = 0; i < following.length; i++) {
            int point = following[i];
            discharge[i] = history.rateAtEnd(step, point) + known[point];
            head[i] = history.headAtEnd(step, point) - fall[i];
        }
        return rulesMet.further(moment, following, history.startsAnew(step), discharge, head);
    }

    /**
     * How much higher head is at a receptor than in the run.
     *
     * @param receptor the receptor: bores first, then springs, then points
     * @param day one of the days wanted (d), or the start of the run
     * @return rise (m)
     * @throws IllegalArgumentException if no step ends on the day, or it is none of those wanted
     */
    public double rise(int receptor, double day) {
        int step = stepThatEnds(day);
        if (step < 0) {
            return 0;
        }
        if (rise[step].length == 0) {
            throw new IllegalArgumentException(
                    "day " + PlainNumber.of(day) + " is none of those on which heads are wanted");
        }
        return rise[step][receptor];
    }

    /**
     * How much more a point gives than in the run.
     *
     * @param point the bore or spring
     * @param day end of a step of the run (d), or its start
     * @return change of discharge (m³/d); of a shut bore, the mean over the first step after a jump
     * @throws IllegalArgumentException if no step ends on the day
     */
    public double change(int point, double day) {
        int step = stepThatEnds(day);
        return step < 0 ? 0 : change[step][point];
    }

    /** How much more a point gives than in the run at the end of a step (m³/d). */
    double changeAtEnd(int step, int point) {
        return change[step][point];
    }

    /** The step that ends on a day, -1 for the start of the run. */
    private int stepThatEnds(double day) {
        int low = 0;
        int high = history.steps();
        while (low <= high) {
            int middle = (low + high) >>> 1;
            double found = history.startOf(middle);
            if (found == day) {
                return middle - 1;
            }
            if (found < day) {
                low = middle + 1;
            } else {
                high = middle - 1;
            }
        }
        throw new IllegalArgumentException("no step of the run ends on day " + PlainNumber.of(day));
    }
}
