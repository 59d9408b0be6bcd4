package org.headfall.solver.response;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.HeadDependence;
import org.headfall.solver.flow.PointRules;
import org.headfall.solver.flow.RateHistory;

/**
 * How strongly bores and springs answered head through a run: by how much the discharge of each falls per metre that head
 * falls at its wall, in each step as at its end. A spring that flows answers by its conductance, a free-flowing bore by the
 * inverse of the slope of its losses; what is held by a bound of its rule does not answer. Immutable.
 */
public final class HeadAnswers {

    /** Head per discharge below which a bore without losses is taken for one with so much (d/m²). */
    private static final double LEAST = 1e-12;

    /**
     * Share of its largest discharge below which a point counts as stopped: rules are met within a tolerance, so runs can leave
     * some ten-thousandth of a discharge where head has fallen below the outlet.
     */
    private static final double STOPPED = 1e-3;

    /** Days on which steps begin, and the end of the last. */
    private final double[] days;

    private final int[] points;

    /** Conductance of each of the points, summed over time from the start to each of the days (m²). */
    private final double[][] sums;

    private final double[] switches;

    /**
     * Answers in a run.
     *
     * @param problem its problem
     * @param history its discharges
     */
    public static HeadAnswers of(FlowProblem problem, RateHistory history) {
        return new HeadAnswers(problem, history, history::rateAtEnd);
    }

    /**
     * Answers in what a run would have been without some bores.
     *
     * @param problem its problem
     * @param history its discharges
     * @param without what is different without the bores
     */
    public static HeadAnswers of(FlowProblem problem, RateHistory history, RunWithout without) {
        return new HeadAnswers(
                problem, history, (step, point) -> history.rateAtEnd(step, point) + without.changeAtEnd(step, point));
    }

    /** Discharges at the ends of steps. */
    @FunctionalInterface
    private interface RateAtEnd {
        double of(int step, int point);
    }

    private HeadAnswers(FlowProblem problem, RateHistory history, RateAtEnd rate) {
        PointRules rules = new PointRules(problem);
        int steps = history.steps();
        days = new double[steps + 1];
        Arrays.setAll(days, history::startOf);
        double[] trickle = trickles(history, rate);
        double[][] conductance = new double[steps][history.points()];
        BitSet answering = new BitSet();
        for (int step = 0; step < steps; step++) {
            double[] discharge = new double[history.points()];
            for (int point = 0; point < discharge.length; point++) {
                discharge[point] = rate.of(step, point);
            }
            List<HeadDependence.Point> found = HeadDependence.of(rules, Math.nextDown(days[step + 1]), discharge)
                    .points();
            for (HeadDependence.Point one : found) {
                if (discharge[one.index()] > trickle[one.index()]) {
                    conductance[step][one.index()] = 1 / Math.max(LEAST, one.headPerDischarge());
                    answering.set(one.index());
                }
            }
        }
        points = answering.stream().toArray();
        sums = new double[points.length][steps + 1];
        for (int i = 0; i < points.length; i++) {
            for (int step = 0; step < steps; step++) {
                sums[i][step + 1] = sums[i][step] + conductance[step][points[i]] * (days[step + 1] - days[step]);
            }
        }
        switches = switches(conductance);
    }

    /** Discharge of each point at which it counts as stopped (m³/d). */
    private static double[] trickles(RateHistory history, RateAtEnd rate) {
        double[] trickles = new double[history.points()];
        for (int point = 0; point < trickles.length; point++) {
            for (int step = 0; step < history.steps(); step++) {
                trickles[point] = Math.max(trickles[point], STOPPED * rate.of(step, point));
            }
        }
        return trickles;
    }

    private double[] switches(double[][] conductance) {
        double[] found = new double[conductance.length];
        int count = 0;
        for (int step = 1; step < conductance.length; step++) {
            for (int point : points) {
                if ((conductance[step][point] > 0) != (conductance[step - 1][point] > 0)) {
                    found[count++] = days[step];
                    break;
                }
            }
        }
        return Arrays.copyOf(found, count);
    }

    /** Whether nothing answers at any time. */
    public boolean areNone() {
        return points.length == 0;
    }

    /** The bores and springs that answer at some time, bores first, by their place in the problem; not to be changed. */
    int[] points() {
        return points;
    }

    /** Days on which one of them begins or ceases to answer, increasing (d); not to be changed. */
    double[] switches() {
        return switches;
    }

    /**
     * Which of the points answer in some time.
     *
     * @param from its beginning (d)
     * @param to its end (d), later
     * @return places among {@link #points}
     */
    int[] answering(double from, double to) {
        int[] all = new int[points.length];
        int count = 0;
        for (int i = 0; i < points.length; i++) {
            if (sum(i, to) > sum(i, from)) {
                all[count++] = i;
            }
        }
        return Arrays.copyOf(all, count);
    }

    /**
     * Fall of head at the wall that takes a unit from the discharge of a point, as the mean of its conductance over some time
     * has it.
     *
     * @param i its place among {@link #points}
     * @param from beginning of that time (d)
     * @param to its end (d), later
     * @return head per discharge (d/m²); infinite if it does not answer
     */
    double headPerDischarge(int i, double from, double to) {
        return (to - from) / (sum(i, to) - sum(i, from));
    }

    private double sum(int i, double day) {
        int found = Arrays.binarySearch(days, day);
        if (found >= 0) {
            return sums[i][found];
        }
        int after = Math.min(days.length - 1, Math.max(1, -found - 1));
        double share = (day - days[after - 1]) / (days[after] - days[after - 1]);
        return sums[i][after - 1] + share * (sums[i][after] - sums[i][after - 1]);
    }
}
