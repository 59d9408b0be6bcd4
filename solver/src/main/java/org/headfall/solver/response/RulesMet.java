package org.headfall.solver.response;

import java.util.Arrays;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.headfall.solver.flow.PointRules;

/**
 * Meets the rules of bores and springs whose discharge depends on head at the end of the step that a superposition looks at.
 * A bore that gets all that is asked of it, and still does with what the others discharge, needs no solving for: it meets its
 * rule as it is, and the rules have one answer. Used by one thread.
 */
final class RulesMet {

    private final PointRules rules;
    private final Superposition superposition;
    private final double tolerance;
    private double[][] responses = {};

    /**
     * Rules to be met.
     *
     * @param rules rules of all points
     * @param superposition the superposition
     * @param tolerance largest error of head at a wall (m)
     */
    RulesMet(PointRules rules, Superposition superposition, double tolerance) {
        this.rules = rules;
        this.superposition = superposition;
        this.tolerance = tolerance;
    }

    /** The same to the same tolerance for other rules and another superposition. */
    RulesMet of(PointRules otherRules, Superposition other) {
        return new RulesMet(otherRules, other, tolerance);
    }

    /**
     * By how much the discharges of some points differ at the end of the step last looked at from what was assumed, so
     * that they meet their rules.
     *
     * @param moment moment of the rules (d)
     * @param points the points
     * @param atOnce whether the difference holds throughout the step, or grows evenly
     * @param assumed discharge of each of these points (m³/d)
     * @param head in: head at the wall of each of these points if that were so; out: with the difference (m above datum)
     * @return difference of discharge of each of these points (m³/d)
     * @throws org.headfall.solver.flow.UnmetRuleException if the rules cannot be met
     */
    double[] further(double moment, int[] points, boolean atOnce, double[] assumed, double[] head) {
        int[] content = places(points, i -> rules.getsAllAsked(moment, points[i], assumed[i], head[i]));
        int[] open = places(points, i -> !rules.getsAllAsked(moment, points[i], assumed[i], head[i]));
        double[] heads = head.clone();
        double[] further = further(moment, points, open, content, atOnce, assumed, heads);
        if (!Arrays.stream(content).allMatch(i -> rules.getsAllAsked(moment, points[i], assumed[i], heads[i]))) {
            System.arraycopy(head, 0, heads, 0, head.length);
            further = further(moment, points, places(points, i -> true), new int[0], atOnce, assumed, heads);
        }
        System.arraycopy(heads, 0, head, 0, head.length);
        return further;
    }

    private static int[] places(int[] points, IntPredicate wanted) {
        return IntStream.range(0, points.length).filter(wanted).toArray();
    }

    /**
     * Meets the rules of the open points, by their places among all, while those that are content discharge what is assumed.
     */
    private double[] further(
            double moment, int[] points, int[] open, int[] content, boolean atOnce, double[] assumed, double[] head) {
        double[] further = new double[points.length];
        int n = open.length;
        if (n == 0) {
            return further;
        }
        int[] chosen = new int[n];
        double[] discharge = new double[n];
        double[] offered = new double[n];
        for (int i = 0; i < n; i++) {
            chosen[i] = points[open[i]];
            discharge[i] = assumed[open[i]];
        }
        double[][] response = responses(chosen, atOnce);
        for (int i = 0; i < n; i++) {
            offered[i] = head[open[i]] + product(response[i], discharge);
        }
        rules.meet(moment, chosen, response, offered, discharge, tolerance);
        double[] more = new double[n];
        for (int i = 0; i < n; i++) {
            more[i] = discharge[i] - assumed[open[i]];
            further[open[i]] = more[i];
        }
        for (int i = 0; i < n; i++) {
            head[open[i]] -= product(response[i], more);
        }
        double[] ofOther = new double[n];
        for (int place : content) {
            superposition.onsets(points[place], chosen, n, atOnce, ofOther);
            head[place] -= product(ofOther, more);
        }
        return further;
    }

    private static double product(double[] row, double[] values) {
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            sum += row[i] * values[i];
        }
        return sum;
    }

    /** Response of the wall of each of some points to a further unit discharge of each; holds until it is asked for again. */
    private double[][] responses(int[] points, boolean atOnce) {
        if (responses.length != points.length) {
            responses = new double[points.length][points.length];
        }
        for (int i = 0; i < points.length; i++) {
            superposition.onsets(points[i], points, i + 1, atOnce, responses[i]);
            for (int j = 0; j < i; j++) {
                responses[j][i] = responses[i][j];
            }
        }
        return responses;
    }
}
