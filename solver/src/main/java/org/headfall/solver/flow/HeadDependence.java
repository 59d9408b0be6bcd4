package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.List;

/**
 * The bores and springs whose discharge follows head at one moment, and how strongly: springs and free-flowing bores that
 * flow, pumps on their curve, pumps cut at their lowest level. What they give less as heads fall is made linear in the
 * state of that moment.
 *
 * @param points the bores and springs, in the order of the problem: bores first, then springs
 */
public record HeadDependence(List<Point> points) {

    /** Share of a bound within which a discharge counts as held by it. */
    private static final double AT_BOUND = 1e-9;

    /** Copies the list. */
    public HeadDependence {
        points = List.copyOf(points);
    }

    /**
     * One of them.
     *
     * @param index number of the bore or spring
     * @param headPerDischarge fall of head at its wall that takes a unit from its discharge (d/m²), not negative
     */
    public record Point(int index, double headPerDischarge) {}

    /** No discharge follows head. */
    public static HeadDependence none() {
        return new HeadDependence(List.of());
    }

    /**
     * The dependence in a state.
     *
     * @param problem the problem
     * @param day moment of the rules (d)
     * @param discharge discharge of each bore and spring in that state (m³/d)
     * @return those that follow head and are held by no bound of their rule
     */
    public static HeadDependence of(FlowProblem problem, double day, double[] discharge) {
        return of(new PointRules(problem), day, discharge);
    }

    /**
     * The dependence in a state, of rules that are known.
     *
     * @param all rules of all bores and springs
     * @param day moment of the rules (d)
     * @param discharge discharge of each bore and spring in that state (m³/d)
     * @return those that follow head and are held by no bound of their rule
     */
    public static HeadDependence of(PointRules all, double day, double[] discharge) {
        DischargeRule[] rules = all.at(day);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < rules.length; i++) {
            double most = rules[i].most();
            boolean free = rules[i].dependsOnHead()
                    && discharge[i] > rules[i].least()
                    && (Double.isInfinite(most) || discharge[i] < most * (1 - AT_BOUND));
            if (free) {
                points.add(new Point(i, rules[i].slope(discharge[i])));
            }
        }
        return new HeadDependence(points);
    }
}
