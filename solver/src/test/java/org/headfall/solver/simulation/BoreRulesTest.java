package org.headfall.solver.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.headfall.solver.analytic.function.ReferenceTable;
import org.headfall.solver.analytic.function.WellFunction;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.Pipe;
import org.headfall.solver.bore.PumpCurve;
import org.headfall.solver.bore.WaterColumn;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.FlowSystem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.schedule.LinearSchedule;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.solver.time.StepControl;
import org.headfall.solver.time.TrapezoidalBdf2;
import org.junit.jupiter.api.Test;

/** Rules of bores solved with the aquifer: sources beside each test. */
class BoreRulesTest {

    private static final double T = 200;
    private static final double S = 2e-4;
    private static final double RADIUS = 0.1;
    private static final double GRAVITY = 9.80665;
    private static final double SECONDS = 86_400;

    /** 20 °C, as in the published friction example of the pipe test. */
    private static final double VISCOSITY = 1.004e-6 * SECONDS;

    private static Bore bore(String name, double x, double y, WellLoss loss, Operation operation) {
        return new Bore(name, x, y, RADIUS, loss, List.of(new OperatingPhase(0, operation)));
    }

    private static FlowProblem infinite(double halfWidth, double fine, double head, Bore... bores) {
        RectilinearGrid grid = Fields.refinedSquare(halfWidth, halfWidth / 20, fine);
        return Fields.problem(Aquifer.homogeneous(grid, T, S), Fields.heldOnAllSides(grid, head), bores);
    }

    private static Simulation simulation(FlowProblem problem) {
        return new Simulation(problem, Settings.DEFAULT);
    }

    private static double[] level(FlowProblem problem, double head) {
        return Fields.level(problem.aquifer().grid(), head);
    }

    /**
     * Jacob and Lohman (1952): a bore that flows against a constant drawdown of 10 m gives 2 pi T s G(T t/(S r²)); table in
     * the test resources. Five decades of time, within 0.5 %.
     */
    @Test
    void freeFlowDeclinesLikeJacobAndLohman() {
        Bore flowing = bore("flowing", 0, 0, WellLoss.NONE, new Operation.FreeFlow(90));
        FlowProblem problem = infinite(200_000, 10, 100, flowing);
        List<Double> days = new ArrayList<>();
        List<Double> expected = new ArrayList<>();
        for (var row : ReferenceTable.read("jacob_lohman_G.csv", 145).rows()) {
            double day = row.number("alpha") * S * RADIUS * RADIUS / T;
            if (day > 0.0099 && day < 1001) {
                days.add(day);
                expected.add(2 * Math.PI * T * 10 * row.number("G_8dig"));
            }
        }
        assertTrue(days.size() > 40, "rows " + days.size());
        double[] record = days.stream().mapToDouble(Double::doubleValue).toArray();
        int[] next = {0};
        simulation(problem).run(level(problem, 100), 0, record[record.length - 1], record, state -> {
            double rate = expected.get(next[0]++);
            assertEquals(rate, state.boreRate()[0], 0.005 * rate, "day " + state.day());
        });
        assertEquals(record.length, next[0]);
    }

    /**
     * Step test with the rates of Clark (1977) in Kruseman and de Ridder (1990, ch. 14; from memory), six steps of 180 min,
     * and their C of 1.45e-7 d²/m⁵: level in the bore is that of Theis superposed plus well loss, within 0.5 %, and what is
     * left after Theis gives C back within 1 % (Jacob 1947).
     */
    @Test
    void stepTestGivesItsCoefficientsBack() {
        double[] rates = {1306, 1693, 2423, 3261, 4094, 5019};
        double[] begins = {0, 0.125, 0.25, 0.375, 0.5, 0.625};
        double[] ends = {0.125, 0.25, 0.375, 0.5, 0.625, 0.75};
        double c = 1.45e-7;
        Operation steps = new Operation.PumpedRate(new StepSchedule(begins, rates), OptionalDouble.empty());
        FlowProblem problem = infinite(20_000, 5, 0, bore("tested", 0, 0, new WellLoss(0, c), steps));
        int[] next = {0};
        simulation(problem).run(level(problem, 0), 0, 0.75, ends, state -> {
            int step = next[0]++;
            double theis = 0;
            for (int i = 0; i <= step; i++) {
                double change = rates[i] - (i == 0 ? 0 : rates[i - 1]);
                double u = RADIUS * RADIUS * S / (4 * T * (state.day() - begins[i]));
                theis += change / (4 * Math.PI * T) * WellFunction.of(u);
            }
            double drawdown = -state.boreLevel()[0];
            double expected = theis + c * rates[step] * rates[step];
            assertEquals(expected, drawdown, 0.005 * expected, "step " + step);
            if (step == 5) {
                double recovered = (drawdown - theis) / (rates[step] * rates[step]);
                assertEquals(c, recovered, 0.01 * c + 0.002 * theis / (rates[step] * rates[step]));
            }
        });
        assertEquals(6, next[0]);
    }

    /** Rorabaugh (1953): the same interface with another exponent, and skin after van Everdingen (1953), by hand. */
    @Test
    void lossWithAnyExponentAndSkinStandBetweenWallAndBore() {
        Bore bore = new Bore(
                "skinned",
                0,
                0,
                RADIUS,
                new WellLoss(1e-4, 1e-8, 2.4),
                2.5,
                WaterColumn.REFERENCE,
                List.of(new OperatingPhase(
                        0, new Operation.PumpedRate(Schedule.constant(1500), OptionalDouble.empty()))));
        FlowProblem problem = infinite(20_000, 50, 0, bore);
        double expected = 1e-4 * 1500 + 1e-8 * Math.pow(1500, 2.4) + 2.5 * 1500 / (2 * Math.PI * T);
        simulation(problem)
                .run(
                        level(problem, 0),
                        0,
                        1,
                        new double[] {1},
                        state -> assertEquals(expected, state.boreWallHead()[0] - state.boreLevel()[0], 1e-9));
    }

    /**
     * Bernoulli from the bore wall to the jet at the outlet: what head stands above the outlet is well loss, friction by
     * Darcy and Weisbach with Colebrook's factor (iterated here) and velocity head. Cold, and with 70 °C in the bore, where
     * Kell's densities (998.204, 977.770) lighten the column on a screen at -500 m.
     */
    @Test
    void headAboveTheOutletIsLossFrictionAndVelocityHead() {
        Pipe casing = new Pipe(0.15, 600, 1e-4, VISCOSITY);
        WellLoss loss = new WellLoss(2e-4, 5e-7);
        Operation flow = new Operation.FreeFlow(110, Optional.of(casing));
        WaterColumn hot = WaterColumn.ofOneTemperature(70, -500);
        Bore cold = bore("cold", 0, 0, loss, flow);
        Bore warm = new Bore("warm", 3000, 0, RADIUS, loss, 0, hot, List.of(new OperatingPhase(0, flow)));
        FlowProblem problem = infinite(20_000, 50, 125, cold, warm);
        simulation(problem).run(level(problem, 125), 0, 30, new double[] {1, 30}, state -> {
            for (int i = 0; i < 2; i++) {
                double rate = state.boreRate()[i];
                assertTrue(rate > 500, "rate " + rate);
                double velocity = rate / SECONDS / (Math.PI * 0.075 * 0.075);
                double reynolds = velocity * 0.15 / 1.004e-6;
                double x = 7;
                for (int iteration = 0; iteration < 60; iteration++) {
                    x = -2 * Math.log10(1e-4 / 0.15 / 3.7 + 2.51 * x / reynolds);
                }
                double lift = velocity * velocity / (2 * GRAVITY) * (1 + 600 / 0.15 / (x * x));
                double inBore = state.boreWallHead()[i] - 2e-4 * rate - 5e-7 * rate * rate;
                double pressureHead = i == 0 ? inBore : -500 + (inBore + 500) * 998.204 / 977.770;
                assertEquals(110 + lift, pressureHead, 2e-4 + (i == 0 ? 0 : 1e-3), "bore " + i);
                assertEquals(110 + lift, state.boreLevel()[i], 2e-4, "bore " + i);
            }
            assertTrue(state.boreRate()[1] > state.boreRate()[0] + 100, "hot water is lighter and flows more");
        });
    }

    /** A pump on a parabola, steady: the discharge at which curve and system meet, by Brent's method of Commons Math. */
    @Test
    void aPumpRunsWhereItsCurveMeetsTheSystem() {
        PumpCurve curve = new PumpCurve(new double[] {0, 600, 1200, 1800}, new double[] {90, 82.8, 61.2, 25.2});
        Pipe riser = new Pipe(0.1, 120, 5e-5, VISCOSITY);
        WellLoss loss = new WellLoss(0, 1e-6);
        Operation pumped = new Operation.PumpedByCurve(curve, 95, Optional.of(riser), OptionalDouble.empty());
        Operation unit = new Operation.PumpedRate(Schedule.constant(1000), OptionalDouble.empty());
        double[] response = {0};
        double far = 100_000;
        FlowProblem once = infinite(20_000, 50, 60, bore("p", 0, 0, loss, unit));
        simulation(once)
                .run(
                        simulation(once).steadyHead(1),
                        1,
                        far,
                        new double[] {far},
                        state -> response[0] = (60 - state.boreWallHead()[0]) / 1000);
        // The parabola 90 - 20e-6 Q² passes through the points, and the curve between them follows it.
        double expected = new BrentSolver(1e-12, 1e-9)
                .solve(
                        200,
                        q -> 90 - 20e-6 * q * q - (95 + riser.loss(q) - (60 - response[0] * q - 1e-6 * q * q)),
                        0,
                        1800);
        FlowProblem problem = infinite(20_000, 50, 60, bore("p", 0, 0, loss, pumped));
        simulation(problem).run(simulation(problem).steadyHead(1), 1, far, new double[] {far}, state -> {
            assertEquals(expected, state.boreRate()[0], 1e-3 * expected);
            double lift = 95 + riser.loss(state.boreRate()[0]) - state.boreLevel()[0];
            assertEquals(curve.head(state.boreRate()[0]), lift, 1e-3);
        });
    }

    /** The lowest level takes over from the curve; a lift beyond the shut-off head gives nothing. */
    @Test
    void aPumpIsCutAtItsLowestLevelAndGivesNothingBeyondItsShutOffHead() {
        PumpCurve curve = new PumpCurve(new double[] {0, 2000, 4000}, new double[] {120, 100, 40});
        Operation cut = new Operation.PumpedByCurve(curve, 100, Optional.empty(), OptionalDouble.of(45));
        Operation tooHigh = new Operation.PumpedByCurve(curve, 190, Optional.empty(), OptionalDouble.empty());
        FlowProblem problem = infinite(
                20_000, 50, 60, bore("cut", 0, 0, WellLoss.NONE, cut), bore("high", 4000, 0, WellLoss.NONE, tooHigh));
        simulation(problem).run(level(problem, 60), 0, 100, new double[] {100}, state -> {
            assertEquals(45, state.boreLevel()[0], 1e-3);
            assertTrue(state.boreRate()[0] > 1000 && state.boreRate()[0] < 4000, "" + state.boreRate()[0]);
            assertEquals(0, state.boreRate()[1]);
            assertEquals(state.boreRate()[0], state.boreWantedRate()[0]);
        });
    }

    private static FlowProblem closeBores() {
        Pipe casing = new Pipe(0.125, 400, 1e-4, VISCOSITY);
        WellLoss loss = new WellLoss(1e-4, 1e-6);
        Operation pumping = new Operation.PumpedRate(
                new StepSchedule(new double[] {0, 20, 60}, new double[] {0, 9000, 0}), OptionalDouble.of(60));
        Operation first = new Operation.FreeFlow(95, Optional.of(casing));
        Operation second = new Operation.FreeFlow(97, Optional.of(casing));
        return infinite(
                20_000,
                25,
                100,
                bore("first", -75, 0, loss, first),
                bore("second", 75, 25, loss, second),
                bore("pumped", 0, 75, loss, pumping));
    }

    /**
     * Two free-flowing bores and a pumped one within 130 m: every rule is met, both shut while the pump draws head below
     * their outlets, open again when it has stopped, and never take water in. The balance of every day closes to 1e-9 of
     * what passed; in single steps of seconds the last digit of heads in double precision is a few billionths of it.
     */
    @Test
    void twoFreeFlowingBoresAndAPumpedOneNearEachOther() {
        FlowProblem problem = closeBores();
        double[] outlets = {95, 97};
        int[] flowing = new int[2];
        int[] shut = new int[2];
        int[] again = new int[2];
        double[] days = new double[100];
        for (int i = 0; i < days.length; i++) {
            days[i] = i + 1;
        }
        simulation(problem).run(level(problem, 100), 0, 100, days, state -> {
            for (int i = 0; i < 2; i++) {
                double rate = state.boreRate()[i];
                assertTrue(rate >= 0, "day " + state.day() + " rate " + rate);
                if (rate > 0) {
                    double outlet = outlets[i] + new Pipe(0.125, 400, 1e-4, VISCOSITY).loss(rate);
                    assertEquals(outlet, state.boreLevel()[i], 1e-3, "day " + state.day());
                    flowing[i]++;
                    again[i] += state.day() > 61 ? 1 : 0;
                } else {
                    assertTrue(state.boreLevel()[i] <= outlets[i] + 1e-3, "day " + state.day());
                    shut[i]++;
                }
            }
            assertTrue(state.balance().relativeDiscrepancy() <= 1e-9, "day " + state.day() + " " + state.balance());
            assertTrue(state.boreLevel()[2] >= 60 - 1e-3, "day " + state.day());
        });
        for (int i = 0; i < 2; i++) {
            assertTrue(flowing[i] > 20 && shut[i] > 20 && again[i] > 20, flowing[i] + " " + shut[i] + " " + again[i]);
        }
    }

    /**
     * Rules active and rates that bend but do not jump: halving a fixed step cuts the error by four (TR-BDF2 is of second
     * order).
     */
    @Test
    void timeSteppingIsOfSecondOrderWithRulesActive() {
        double coarse = dischargeWithSteps(1);
        double middle = dischargeWithSteps(0.5);
        double fine = dischargeWithSteps(0.25);
        double finest = dischargeWithSteps(0.125);
        assertEquals(2, Math.log((coarse - middle) / (middle - fine)) / Math.log(2), 0.25);
        assertEquals(2, Math.log((middle - fine) / (fine - finest)) / Math.log(2), 0.25);
    }

    private static double dischargeWithSteps(double length) {
        Pipe casing = new Pipe(0.125, 400, 1e-4, VISCOSITY);
        WellLoss loss = new WellLoss(1e-4, 1e-6);
        Axis axis = Axis.uniform(-10_000, 500, 40);
        RectilinearGrid grid = new RectilinearGrid(axis, axis);
        Schedule ramp = new LinearSchedule(new double[] {0, 40}, new double[] {0, 6000});
        FlowProblem problem = Fields.problem(
                Aquifer.homogeneous(grid, T, 2e-3),
                Fields.heldOnAllSides(grid, 100),
                bore("flowing", 250, 250, loss, new Operation.FreeFlow(90, Optional.of(casing))),
                bore("pumped", 2250, 250, loss, new Operation.PumpedRate(ramp, OptionalDouble.empty())));
        try (WorkerTeam team = new WorkerTeam(1)) {
            FlowSystem system = new FlowSystem(problem, 1e-8, team, 0);
            double[] head = new double[grid.cellCount()];
            system.steady(0, head);
            system.startRate(0, head, new double[head.length]);
            TrapezoidalBdf2 integrator = new TrapezoidalBdf2(system, new StepControl(1e6, length, 1e-9), team);
            integrator.restart(length);
            integrator.integrate(head, 0, 16);
            assertTrue(system.discharge(0) > 300, "" + system.discharge(0));
            return system.discharge(0);
        }
    }

    /** No side is open: pumping for ever has no steady state, and the message says what to do. */
    @Test
    void aClosedAquiferHasNoSteadyState() {
        Axis axis = Axis.uniform(0, 500, 10);
        RectilinearGrid grid = new RectilinearGrid(axis, axis);
        Operation pumped = new Operation.PumpedRate(Schedule.constant(700), OptionalDouble.empty());
        FlowProblem problem = Fields.problem(
                Aquifer.homogeneous(grid, T, S), List.of(), bore("Mulga 3", 2250, 2250, WellLoss.NONE, pumped));
        var thrown = assertThrows(
                IllegalStateException.class, () -> simulation(problem).steadyHead(0));
        assertTrue(thrown.getMessage().contains("Mulga 3"), thrown.getMessage());
        assertTrue(thrown.getMessage().contains("700"), thrown.getMessage());
        assertTrue(thrown.getMessage().contains("give a boundary a head"), thrown.getMessage());
    }
}
