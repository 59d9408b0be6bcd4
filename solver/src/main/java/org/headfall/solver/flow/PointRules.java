package org.headfall.solver.flow;

import java.util.Arrays;
import org.headfall.solver.bore.WellLoss;

/** Rules of all bores and springs through time: bores first, then springs, in the order of the problem. */
public final class PointRules {

    /** Share of a discharge by which another must differ for a chord rather than the slope. */
    private static final double SAME = 1e-6;

    /** Fall of head per discharge where head is given (d/m²): next to none. */
    private static final double NO_RESPONSE = 1e-12;

    /** Share of a discharge over which a rule counts as straight. */
    private static final double STRAIGHT = 1e-4;

    private final FlowProblem problem;
    private final WellLoss[] losses;
    private final DischargeRule[] springs;

    /** What was asked for last, for a step asks for the same moment several times; never half made, whoever reads it. */
    private volatile InForce last;

    /** Rules of all points at a moment; not to be changed. */
    @SuppressWarnings("ArrayRecordComponent") // kept and never compared
    private record InForce(double day, DischargeRule[] rules) {}

    /**
     * Rules of a problem.
     *
     * @param problem the problem
     */
    public PointRules(FlowProblem problem) {
        this.problem = problem;
        losses = problem.bores().stream().map(problem::lossIn).toArray(WellLoss[]::new);
        springs = problem.springs().stream().map(DischargeRule::of).toArray(DischargeRule[]::new);
        last = inForce(0);
    }

    /** Rules in force at a day; not to be changed. */
    DischargeRule[] at(double day) {
        InForce found = last;
        if (found.day() != day) {
            found = inForce(day);
            last = found;
        }
        return found.rules();
    }

    private InForce inForce(double day) {
        DischargeRule[] rules = new DischargeRule[losses.length + springs.length];
        for (int i = 0; i < losses.length; i++) {
            rules[i] = DischargeRule.of(problem.bores().get(i), losses[i], day);
        }
        System.arraycopy(springs, 0, rules, losses.length, springs.length);
        return new InForce(day, rules);
    }

    /** How the discharge of a point came to differ from that at the start. */
    public enum Part {
        /** By what was done there: a rate, a valve, a pump at its lowest level. */
        GIVEN,
        /** By the head there: it flows, or pumps along its curve, as it did at the start. */
        FOLLOWS,
        /** It flowed at the start and head has fallen too low for any flow. */
        STOPPED
    }

    /**
     * Part of each point at a moment.
     *
     * @param day the moment (d)
     * @param discharge discharge of each point then (m³/d)
     * @param atStart discharge of each point at the start (m³/d)
     * @return the parts
     */
    public Part[] parts(double day, double[] discharge, double[] atStart) {
        DischargeRule[] rules = at(day);
        Part[] parts = new Part[rules.length];
        for (int i = 0; i < parts.length; i++) {
            DischargeRule rule = rules[i];
            if (!rule.dependsOnHead() || !(atStart[i] > rule.least() && atStart[i] < rule.most())) {
                parts[i] = Part.GIVEN;
            } else if (discharge[i] > rule.least() && discharge[i] < rule.most()) {
                parts[i] = Part.FOLLOWS;
            } else {
                parts[i] = discharge[i] <= rule.least() ? Part.STOPPED : Part.GIVEN;
            }
        }
        return parts;
    }

    /**
     * Rise of the heads that points need at their walls over the rise of their discharges, from some to others.
     *
     * @param day moment of the rules (d)
     * @param chosen the points; their discharges follow head
     * @param from discharge of every point (m³/d)
     * @param to another discharge of every point (m³/d)
     * @return slope of the chord of each chosen point, or of its rule where both discharges are the same (d/m²)
     */
    public double[] chords(double day, int[] chosen, double[] from, double[] to) {
        DischargeRule[] rules = at(day);
        double[] chords = new double[chosen.length];
        for (int i = 0; i < chosen.length; i++) {
            chords[i] = chord(rules[chosen[i]], from[chosen[i]], to[chosen[i]]);
        }
        return chords;
    }

    /**
     * Head over discharge that a point loses when head at its wall falls, from a discharge that follows head: steeper than
     * the slope of its rule the farther it falls where the point stops, less steep where its loss bends.
     *
     * @param day moment of the rules (d)
     * @param point the point
     * @param discharge its discharge before (m³/d), positive
     * @param fall fall of head at its wall (m), positive
     * @return slope of the chord (d/m²); NaN if its discharge does not depend on head, or is the most that its rule allows
     */
    public double chordOver(double day, int point, double discharge, double fall) {
        DischargeRule rule = at(day)[point];
        if (!rule.dependsOnHead() || discharge >= rule.most()) {
            return Double.NaN;
        }
        double lower = rule.neededHead(discharge) - fall;
        double after = lower > rule.neededHead(rule.least())
                ? rule.needed().discharge(lower, NO_RESPONSE, discharge)
                : rule.least();
        // The search for a discharge errs by more than the slope does over a fall that takes next to nothing.
        return discharge - after > STRAIGHT * discharge ? fall / (discharge - after) : rule.slope(discharge);
    }

    private static double chord(DischargeRule rule, double from, double to) {
        return Math.abs(to - from) > SAME * Math.abs(to)
                ? (rule.neededHead(to) - rule.neededHead(from)) / (to - from)
                : rule.slope(to);
    }

    /** Level of the water in a bore (m above datum) behind a head at its wall. */
    public double levelInBore(int bore, double wallHead, double discharge) {
        return problem.bores().get(bore).column().level(wallHead - losses[bore].at(discharge));
    }

    /**
     * Discharge asked of each point at a moment.
     *
     * @param day the moment (d)
     * @return discharge (m³/d), NaN where the rule leaves it to head
     */
    public double[] asked(double day) {
        return Arrays.stream(at(day)).mapToDouble(DischargeRule::asked).toArray();
    }

    /**
     * Whether the discharge of each point depends on head at a moment.
     *
     * @param day the moment (d)
     * @return one answer a point
     */
    public boolean[] dependOnHead(double day) {
        DischargeRule[] rules = at(day);
        boolean[] depend = new boolean[rules.length];
        for (int i = 0; i < depend.length; i++) {
            depend[i] = rules[i].dependsOnHead();
        }
        return depend;
    }

    /**
     * Whether a point discharges all that its rule allows, and head at its wall is high enough for that.
     *
     * @param day moment of the rule (d)
     * @param point the point
     * @param discharge its discharge (m³/d)
     * @param head head at its wall (m above datum)
     */
    public boolean getsAllAsked(double day, int point, double discharge, double head) {
        DischargeRule rule = at(day)[point];
        return discharge == rule.most() && rule.neededHead(discharge) <= head;
    }

    /**
     * Discharges of some points, met together with the heads they cause, for whoever knows the heads that the aquifer
     * offers without solving for them.
     *
     * @param day moment of the rules (d)
     * @param chosen the points
     * @param response fall of head at the wall of each chosen point by a unit discharge of each (d/m²), symmetric
     * @param offered head at the wall of each chosen point if none of them discharged (m above datum)
     * @param discharge in: a guess; out: discharge of each chosen point (m³/d)
     * @param tolerance largest error of head at a wall (m)
     * @throws IllegalStateException if the rules cannot be met
     */
    public void meet(
            double day, int[] chosen, double[][] response, double[] offered, double[] discharge, double tolerance) {
        DischargeRule[] all = at(day);
        DischargeRule[] rules = new DischargeRule[chosen.length];
        for (int i = 0; i < chosen.length; i++) {
            rules[i] = all[chosen[i]];
        }
        new DischargeEquilibrium(rules, response, offered, tolerance).solve(discharge);
    }
}
