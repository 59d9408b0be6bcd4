package org.headfall.solver.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.Pipe;
import org.headfall.solver.bore.PumpCurve;
import org.headfall.solver.bore.WaterColumn;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.api.Test;

/** Properties of the equilibrium of rules over random bores; every failure names the seed of its trial. */
class DischargeEquilibriumTest {

    private static final double TOLERANCE = 1e-7;
    private static final int TRIALS = 2000;

    /** Free flow with and without casing, pump curves with and without lowest level, cut rates, hot and cold. */
    private static DischargeRule randomRule(Random random) {
        WellLoss loss = new WellLoss(
                random.nextInt(3) == 0 ? 0 : 1e-3 * random.nextDouble(),
                Math.pow(10, -9 + 4 * random.nextDouble()),
                1.5 + 1.5 * random.nextDouble());
        WaterColumn column = random.nextBoolean()
                ? WaterColumn.REFERENCE
                : new WaterColumn(20 + 60 * random.nextDouble(), 20 + 80 * random.nextDouble(), -1000);
        Optional<Pipe> pipe = random.nextBoolean()
                ? Optional.empty()
                : Optional.of(new Pipe(0.05 + 0.2 * random.nextDouble(), 1000 * random.nextDouble(), 1e-4, 0.05));
        OptionalDouble lowest =
                random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(60 + 40 * random.nextDouble());
        double most = 500 + 4000 * random.nextDouble();
        Operation operation = switch (random.nextInt(3)) {
            case 0 -> new Operation.FreeFlow(90 + 20 * random.nextDouble(), pipe);
            case 1 ->
                new Operation.PumpedRate(Schedule.constant(most), OptionalDouble.of(60 + 50 * random.nextDouble()));
            default -> {
                double head = 20 + 60 * random.nextDouble();
                PumpCurve curve = new PumpCurve(
                        new double[] {0, 0.4 * most, 0.8 * most, most},
                        new double[] {head, 0.9 * head, 0.5 * head, 0.3 * head});
                yield new Operation.PumpedByCurve(curve, 100 + 40 * random.nextDouble(), pipe, lowest);
            }
        };
        Bore bore = new Bore("bore", 0, 0, 0.1, loss, 0, column, List.of(new OperatingPhase(0, operation)));
        return DischargeRule.of(bore, loss, 1);
    }

    /** A random symmetric positive definite response, as an aquifer's is. */
    private static double[][] randomResponse(Random random, int n) {
        double[][] factor = new double[n][n];
        for (double[] row : factor) {
            for (int j = 0; j < n; j++) {
                row[j] = 0.03 * random.nextDouble();
            }
        }
        double[][] response = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                for (int k = 0; k < n; k++) {
                    response[i][j] += factor[i][k] * factor[j][k] / n;
                }
            }
            response[i][i] += 1e-3 * random.nextDouble() + 1e-6;
        }
        return response;
    }

    private static double[] randomVector(Random random, int n, double from, double width) {
        return random.doubles(n).map(value -> from + width * value).toArray();
    }

    private static double wallHead(double[][] response, double[] offered, double[] discharge, int i) {
        double head = offered[i];
        for (int j = 0; j < discharge.length; j++) {
            head -= response[i][j] * discharge[j];
        }
        return head;
    }

    @Test
    void everyRuleIsMetOrHeldAtItsBoundAndTheAnswerDoesNotDependOnTheGuess() {
        for (int seed = 0; seed < TRIALS; seed++) {
            Random random = new Random(seed);
            int n = 1 + random.nextInt(6);
            DischargeRule[] rules = new DischargeRule[n];
            for (int i = 0; i < n; i++) {
                rules[i] = randomRule(random);
            }
            double[][] response = randomResponse(random, n);
            double[] offered = randomVector(random, n, 70, 80);
            DischargeEquilibrium equilibrium = new DischargeEquilibrium(rules, response, offered, TOLERANCE);
            double[] first = new double[n];
            double[] second = randomVector(random, n, 0, 1e5);
            equilibrium.solve(first);
            equilibrium.solve(second);
            for (int i = 0; i < n; i++) {
                String trial = "seed " + seed + " bore " + i + " " + rules[i];
                assertTrue(first[i] >= rules[i].least() && first[i] <= rules[i].most(), trial);
                double excess = wallHead(response, offered, first, i) - rules[i].neededHead(first[i]);
                assertTrue(first[i] > rules[i].least() || excess <= TOLERANCE, trial + " shut, excess " + excess);
                assertTrue(first[i] < rules[i].most() || excess >= -TOLERANCE, trial + " at most, excess " + excess);
                boolean between = first[i] > rules[i].least() && first[i] < rules[i].most();
                assertTrue(!between || Math.abs(excess) <= TOLERANCE, trial + excess);
                assertEquals(first[i], second[i], 1e-6 * (1 + Math.abs(first[i])) + TOLERANCE / 1e-6 * 2, trial);
            }
        }
    }

    /** One bore against Brent's method of Commons Math. */
    @Test
    void oneBoreIsThatOfABracketingSolver() {
        int open = 0;
        for (int seed = 0; seed < TRIALS; seed++) {
            Random random = new Random(seed);
            DischargeRule rule = randomRule(random);
            double response = Math.pow(10, -4 + 3 * random.nextDouble());
            double offered = 70 + 80 * random.nextDouble();
            UnivariateFunction missing = q -> rule.neededHead(q) + response * q - offered;
            double limit = Math.min(rule.most(), 1e7);
            double expected;
            if (missing.value(0) >= 0) {
                expected = 0;
            } else if (missing.value(limit) <= 0) {
                expected = limit;
            } else {
                expected = new BrentSolver(1e-14, 1e-9).solve(500, missing, 0, limit);
                open++;
            }
            double[] discharge = {random.nextDouble() * 1e4};
            new DischargeEquilibrium(
                            new DischargeRule[] {rule}, new double[][] {{response}}, new double[] {offered}, TOLERANCE)
                    .solve(discharge);
            assertEquals(expected, discharge[0], 2 * TOLERANCE / response, "seed " + seed + " " + rule);
            assertEquals(
                    expected,
                    rule.needed().discharge(offered, response, rule.most()),
                    1e-6 + 1e-9 * expected,
                    "seed " + seed + " " + rule);
        }
        assertTrue(open > TRIALS / 4, "only " + open + " trials had a bore between its bounds");
    }

    /** More head at every wall: a bore alone never gives less, and all together take more. */
    @Test
    void moreHeadGivesMoreWater() {
        for (int seed = 0; seed < TRIALS; seed++) {
            Random random = new Random(seed);
            DischargeRule[] rules = {randomRule(random), randomRule(random), randomRule(random)};
            double[][] response = randomResponse(random, 3);
            double[] offered = randomVector(random, 3, 70, 80);
            double[] before = new double[3];
            new DischargeEquilibrium(rules, response, offered, TOLERANCE).solve(before);
            int raised = random.nextInt(3);
            offered[raised] += 5;
            double[] after = before.clone();
            new DischargeEquilibrium(rules, response, offered, TOLERANCE).solve(after);
            // A monotone map: (offered' - offered) . (q' - q) is not negative.
            assertTrue(after[raised] >= before[raised] - 0.01, "seed " + seed);
        }
    }

    @Test
    void aRuleThatCannotBeMetIsNamed() {
        DischargeRule broken = DischargeRule.of(
                new Bore(
                        "Mulga 3",
                        0,
                        0,
                        0.1,
                        WellLoss.NONE,
                        List.of(new OperatingPhase(0, new Operation.FreeFlow(Double.NaN)))),
                WellLoss.NONE,
                1);
        var thrown = assertThrows(
                UnmetRuleException.class,
                () -> new DischargeEquilibrium(
                                new DischargeRule[] {broken}, new double[][] {{1e-3}}, new double[] {100}, TOLERANCE)
                        .solve(new double[1]));
        assertEquals("Mulga 3", thrown.point());
        assertTrue(thrown.getMessage().contains("check its levels"), thrown.getMessage());
    }
}
