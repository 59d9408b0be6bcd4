package org.headfall.solver.flow;

import java.util.Arrays;

/**
 * Solves one implicit stage, or the steady state, together with the rules of all bores and springs:
 *
 * <pre>{@code (shift + A) h + G q = right,   q_i by its rule from the head at its wall}</pre>
 *
 * <p>The grid is solved with guessed discharges first. Heads at the walls depend linearly on the discharges through a
 * small symmetric matrix K (one grid solve for each head-dependent point, kept for each coefficient), so the rules are
 * then met exactly by {@link DischargeEquilibrium}, and the heads are corrected by the same responses. The big matrix is never
 * touched by the rules. Points whose rate is given, and pumps that do not reach their lowest level, cost nothing.
 */
final class CoupledSolve {

    private static final int MOST_CORRECTIONS = 20;

    private final StageMatrix matrix;
    private final PointDischarges points;
    private final double tolerance;
    private final double[] remaining;
    private final boolean[] engaged;
    private final WallResponses responses;

    /**
     * Solver of coupled stages.
     *
     * @param matrix the grid part
     * @param points bores and springs
     * @param tolerance largest error of head at a wall by the rules (m)
     */
    CoupledSolve(StageMatrix matrix, PointDischarges points, double tolerance) {
        this.matrix = matrix;
        this.points = points;
        this.tolerance = tolerance;
        remaining = new double[matrix.size()];
        engaged = new boolean[points.count()];
        responses = new WallResponses(matrix, points);
    }

    /**
     * Solves for heads and discharges. The matrix must have been prepared for the coefficient.
     *
     * @param right right-hand side without points and without what is released (m³/d)
     * @param base head that release counts from (m); of no account in the steady state
     * @param rules rules in force
     * @param head in: a guess; out: heads (m)
     * @param discharge in: a guess; out: discharges (m³/d)
     * @throws UnmetRuleException if the rules cannot be met; it names the bore or spring that is farthest off
     */
    void solve(double[] right, double[] base, DischargeRule[] rules, double[] head, double[] discharge) {
        for (int i = 0; i < rules.length; i++) {
            discharge[i] = engaged[i] ? rules[i].clamp(discharge[i]) : firstDischarge(rules[i], discharge[i]);
        }
        solveGrid(right, base, head, discharge);
        for (int attempt = 0; attempt < MOST_CORRECTIONS; attempt++) {
            engage(rules, head, discharge);
            double[] change = ruleCorrection(rules, head, discharge);
            if (change.length == 0) {
                matrix.conserve(right, base, Arrays.stream(discharge).sum(), head);
                return;
            }
            take(change, head, discharge);
        }
        throw unmet(rules, head, discharge);
    }

    private UnmetRuleException unmet(DischargeRule[] rules, double[] head, double[] discharge) {
        int worst = 0;
        double farthest = -1;
        double missing = 0;
        for (int i = 0; i < rules.length; i++) {
            double difference = rules[i].neededHead(discharge[i]) - points.wallHead(i, head, discharge);
            if (engaged[i] && rules[i].dependsOnHead() && Math.abs(difference) > farthest) {
                worst = i;
                farthest = Math.abs(difference);
                missing = difference;
            }
        }
        return new UnmetRuleException(rules[worst].name(), discharge[worst], missing, tolerance);
    }

    /** Largest error of head at a wall (m). */
    double tolerance() {
        return tolerance;
    }

    private static double firstDischarge(DischargeRule rule, double guess) {
        return Double.isFinite(rule.most()) ? rule.most() : rule.clamp(guess);
    }

    private void solveGrid(double[] right, double[] base, double[] head, double[] discharge) {
        double[] release = matrix.release();
        matrix.loops().run((from, to) -> {
            for (int cell = from; cell < to; cell++) {
                remaining[cell] = right[cell] + release[cell] * base[cell];
            }
        });
        points.takeFrom(remaining, discharge);
        matrix.solve(remaining, head);
    }

    /** Changes discharges, and heads by what that does. */
    private void take(double[] change, double[] head, double[] discharge) {
        float[][] response = new float[change.length][];
        for (int i = 0; i < change.length; i++) {
            if (change[i] != 0) {
                discharge[i] += change[i];
                response[i] = responses.of(i);
            }
        }
        matrix.loops().run((from, to) -> {
            for (int i = 0; i < change.length; i++) {
                if (response[i] != null) {
                    subtract(change[i], response[i], head, from, to);
                }
            }
        });
    }

    private static void subtract(double taken, float[] response, double[] head, int from, int to) {
        for (int cell = from; cell < to; cell++) {
            head[cell] -= taken * response[cell];
        }
    }

    /** Takes up every head-dependent point whose rule is not met by the discharge it has. */
    private void engage(DischargeRule[] rules, double[] head, double[] discharge) {
        for (int i = 0; i < rules.length; i++) {
            boolean unbounded = !Double.isFinite(rules[i].most());
            boolean unmet = rules[i].dependsOnHead()
                    && rules[i].neededHead(discharge[i]) > points.wallHead(i, head, discharge) + tolerance;
            engaged[i] |= unbounded || unmet;
        }
    }

    /** Change of all discharges that meets the rules, or an empty array if they are met. */
    private double[] ruleCorrection(DischargeRule[] rules, double[] head, double[] discharge) {
        int[] active = activePoints(rules);
        int n = active.length;
        double[][] response = new double[n][n];
        double[] offered = new double[n];
        double[] sought = new double[n];
        DischargeRule[] activeRules = new DischargeRule[n];
        for (int i = 0; i < n; i++) {
            activeRules[i] = rules[active[i]];
            sought[i] = discharge[active[i]];
            for (int j = 0; j < n; j++) {
                response[i][j] =
                        points.weights(active[i]).of(responses.of(active[j])) + points.unresolved(active[i], active[j]);
            }
        }
        for (int i = 0; i < n; i++) {
            offered[i] = points.wallHead(active[i], head, discharge);
            for (int j = 0; j < n; j++) {
                offered[i] += response[i][j] * sought[j];
            }
        }
        new DischargeEquilibrium(activeRules, response, offered, 0.1 * tolerance).solve(sought);
        return changes(active, response, sought, discharge);
    }

    private double[] changes(int[] active, double[][] response, double[] sought, double[] discharge) {
        double[] change = new double[discharge.length];
        boolean needed = false;
        for (int i = 0; i < active.length; i++) {
            change[active[i]] = sought[i] - discharge[active[i]];
            needed |= Math.abs(change[active[i]]) * response[i][i] > tolerance;
        }
        return needed ? change : new double[0];
    }

    private int[] activePoints(DischargeRule[] rules) {
        int[] active = new int[rules.length];
        int n = 0;
        for (int i = 0; i < rules.length; i++) {
            if (engaged[i] && rules[i].dependsOnHead()) {
                active[n++] = i;
            }
        }
        return Arrays.copyOf(active, n);
    }
}
