package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.headfall.solver.allocation.Excess;
import org.headfall.solver.allocation.Programme;
import org.headfall.solver.bore.WellLoss;

/**
 * Energy of lifting water where lifts grow in proportion to rates: the sum of {@code w r max(0, l)} over bores and stretches of
 * time, with a weight w, the rate r, and the lift {@code l = b + c x + loss(r)} by all rates x. Water that stands above the
 * level it is delivered to is lifted by nothing.
 *
 * <p>That is not convex in the rates of several bores: it is made smaller by convex programmes that have its value's slope at given
 * rates (sequential convex programming; Boyd and Vandenberghe 2004, Convex Optimization, has the convex part, the rest from memory).
 */
final class LiftedWater {

    /** Lift that all water counts besides (m), lest more than is wanted be taken because it costs nothing. */
    private static final double OF_ANY = 1e-3;

    private final int variables;
    private final List<Term> terms = new ArrayList<>();

    /**
     * One bore in one stretch of time.
     *
     * @param own its variable
     * @param weight energy by a unit of rate and lift
     * @param base lift if no bore took anything, negative where water stands above (m)
     * @param response fall of the level by a unit of each variable, without the loss (d/m²)
     * @param loss what the bore loses
     */
    @SuppressWarnings("ArrayRecordComponent") // a row of a large matrix, never compared
    record Term(int own, double weight, double base, double[] response, WellLoss loss) {

        /** Lift if the bore itself took nothing (m). */
        private double withoutOwn(double[] rates) {
            double sum = base;
            for (int v = 0; v < rates.length; v++) {
                sum += v == own ? 0 : response[v] * rates[v];
            }
            return sum;
        }

        /** Loss per discharge at a rate (d/m²). */
        private double chord(double rate) {
            return rate > 0 ? loss.at(rate) / rate : 0;
        }

        /** Lift, negative where water stands above (m). */
        private double lift(double[] rates) {
            return withoutOwn(rates) + response[own] * rates[own] + loss.at(rates[own]);
        }
    }

    LiftedWater(int variables) {
        this.variables = variables;
    }

    void add(Term term) {
        terms.add(term);
    }

    /** Energy of lifting at some rates, and of a millimetre more of all water. */
    double energy(double[] rates) {
        return terms.stream()
                .mapToDouble(one -> one.weight() * rates[one.own()] * (OF_ANY + Math.max(0, one.lift(rates))))
                .sum();
    }

    /** Whether water would stand above its delivery level in some bore while that rests and the others take. */
    boolean anyStandsAbove(double[] rates) {
        return !standingAbove(rates).isEmpty();
    }

    /** Variables of bores in which it would. */
    private BitSet standingAbove(double[] rates) {
        BitSet above = new BitSet();
        for (Term one : terms) {
            if (one.withoutOwn(rates) < 0) {
                above.set(one.own());
            }
        }
        return above;
    }

    /**
     * The programme as if the surplus of water that stands above its delivery level were gained: convex, and the energy itself where
     * none does.
     *
     * @param most largest rate of each variable (m³/d)
     * @param rates rates around which losses are made quadratic (m³/d); none if none are known
     * @param slopes least loss per discharge of each variable that is counted (d/m²)
     */
    Programme withSurplusGained(double[] most, double[] rates, double[] slopes) {
        double[] cost = new double[variables];
        double[][] curvature = new double[variables][variables];
        for (Term one : terms) {
            double slope = slopes[one.own()];
            cost[one.own()] += one.weight() * one.base();
            if (rates.length > 0) {
                double rate = rates[one.own()];
                slope = Math.max(slope, one.chord(rate));
                cost[one.own()] +=
                        one.weight() * (one.loss().at(rate) + rate * one.loss().slope(rate) - 2 * slope * rate);
            }
            for (int v = 0; v < variables; v++) {
                double factor = one.weight() * (one.response()[v] + (v == one.own() ? slope : 0));
                curvature[one.own()][v] += factor;
                curvature[v][one.own()] += factor;
            }
        }
        return new Programme(most, cost, curvature);
    }

    /**
     * A convex programme whose cost has, but for a constant, the value and slope of the energy at some rates. What a bore does to its
     * own lift counts in full: {@code r max(0, a + c r) = t (t - a) / c}, with t the lift and not negative. What others
     * do to the lift of a bore, and it to theirs, counts in full only between bores in none of which water stands above.
     *
     * @param most largest rate of each variable (m³/d)
     * @param rates the rates (m³/d)
     */
    Programme around(double[] most, double[] rates) {
        BitSet above = standingAbove(rates);
        double[] cost = new double[variables];
        double[][] curvature = new double[variables][variables];
        List<Excess> excesses = new ArrayList<>();
        for (Term one : terms) {
            cost[one.own()] += one.weight() * OF_ANY;
            if (one.withoutOwn(rates) < 0) {
                excesses.add(excess(one, rates, cost));
            } else {
                addProduct(one, rates, above, cost, curvature);
            }
        }
        return new Programme(most, cost, curvature, excesses);
    }

    /** By a tangent to the loss. */
    private static Excess excess(Term one, double[] rates, double[] cost) {
        double rate = rates[one.own()];
        double slope = one.loss().slope(rate);
        double constant = one.base() + one.loss().at(rate) - slope * rate;
        double own = one.response()[one.own()] + slope;
        double[] coefficients = one.response().clone();
        coefficients[one.own()] = own;
        double perLift = one.weight() / own;
        double lift = Math.max(0, one.lift(rates));
        for (int v = 0; v < cost.length; v++) {
            cost[v] -= v == one.own() ? 0 : perLift * lift * coefficients[v];
        }
        // Not above nothing, as loss bends upwards; but rounding may have it so.
        double withoutOwn = Math.min(0, one.withoutOwn(rates) + (one.loss().at(rate) - slope * rate));
        return new Excess(coefficients, -constant, -perLift * withoutOwn, 2 * perLift);
    }

    /** Rate times lift: with a parabola that has value and slope of rate times loss, bent at least as much as the line from none to it. */
    private static void addProduct(Term one, double[] rates, BitSet above, double[] cost, double[][] curvature) {
        int own = one.own();
        double rate = rates[own];
        double chord = one.chord(rate);
        cost[own] += one.weight()
                * (one.base() + one.loss().at(rate) + rate * one.loss().slope(rate) - 2 * chord * rate);
        curvature[own][own] += 2 * one.weight() * chord;
        for (int v = 0; v < rates.length; v++) {
            double factor = one.weight() * one.response()[v];
            if (v == own || (!above.get(own) && !above.get(v))) {
                curvature[own][v] += factor;
                curvature[v][own] += factor;
            } else {
                cost[own] += factor * rates[v];
                cost[v] += factor * rate;
            }
        }
    }
}
