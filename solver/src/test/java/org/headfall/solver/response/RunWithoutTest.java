package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The reference is the run itself, with the same bores shut. */
class RunWithoutTest {

    private static final double END = 400;
    private static final double[] DAYS = {1, 30, 99, 101, 180, 249, 251, 300, END};
    private static final Settings SETTINGS = new Settings(2e-4, Double.POSITIVE_INFINITY, 1);
    private static final double[] POINT = {9_400, 6_600};

    /** Heads at bores, spring and point, then discharges of bores and spring, at each day. */
    private record Run(List<double[]> heads, List<double[]> discharges, Simulation.Outcome outcome) {}

    private static Run run(FlowProblem problem) {
        List<double[]> heads = new ArrayList<>();
        List<double[]> discharges = new ArrayList<>();
        ObservedHead point = point(problem);
        double[] start = InterferenceTest.level(problem.aquifer().grid().cellCount(), InterferenceTest.START_HEAD);
        try (Simulation simulation = new Simulation(problem, SETTINGS)) {
            Simulation.Outcome outcome = simulation.run(start, 0, END, DAYS, state -> {
                double[] wall = state.boreWallHead();
                double[] rate = state.boreRate();
                heads.add(
                        new double[] {wall[0], wall[1], wall[2], state.springHead()[0], point.at(state.head(), rate)});
                discharges.add(new double[] {rate[0], rate[1], rate[2], state.springDischarge()[0]});
            });
            return new Run(heads, discharges, outcome);
        }
    }

    private static FlowProblem shutting(FlowProblem problem, int shut) {
        List<Bore> bores = new ArrayList<>(problem.bores());
        Bore bore = bores.get(shut);
        bores.set(shut, new Bore(bore.name(), bore.x(), bore.y(), bore.screenRadius(), bore.wellLoss(), List.of()));
        return problem.withBores(bores);
    }

    /** Bores with rates, and a free-flowing one: with each shut, the others, the spring and the point are as simulated. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void agreesWithTheRunItReplaces(int shut) {
        FlowProblem problem = InterferenceTest.field();
        Run whole = run(problem);
        Run without = run(shutting(problem, shut));
        UnitResponses responses = responses(problem);
        BitSet bores = new BitSet();
        bores.set(shut);
        RunWithout superposed =
                new RunWithout(problem, responses, whole.outcome().rateHistory(), bores, 1e-4, DAYS);
        for (int k = 0; k < DAYS.length; k++) {
            for (int i = 0; i < 5; i++) {
                double effect = without.heads().get(k)[i] - whole.heads().get(k)[i];
                double allowed = Math.max(0.001, 0.003 * Math.abs(effect));
                String place = "receptor " + i + " day " + DAYS[k];
                assertEquals(effect, superposed.rise(i, DAYS[k]), allowed, place);
            }
            for (int i = 0; i < 4; i++) {
                double effect =
                        without.discharges().get(k)[i] - whole.discharges().get(k)[i];
                double allowed = Math.max(0.1, 0.003 * Math.abs(effect));
                // Of a shut bore the mean over the step is known, not its discharge at the end.
                if (i != shut) {
                    String place = "discharge " + i + " day " + DAYS[k];
                    assertEquals(effect, superposed.change(i, DAYS[k]), allowed, place);
                }
            }
        }
        assertTrue(superposed.rise(shut, 30) > 0.5, "the effect is large enough to judge");
    }

    @Test
    void shuttingNothingChangesNothing() {
        FlowProblem problem = InterferenceTest.field();
        Run whole = run(problem);
        RunWithout same = new RunWithout(
                problem, responses(problem), whole.outcome().rateHistory(), new BitSet(), 1e-4, new double[] {END});
        for (int receptor = 0; receptor < 5; receptor++) {
            assertEquals(0, same.rise(receptor, 0));
            assertEquals(0, same.rise(receptor, END), 1e-4);
        }
        assertThrows(IllegalArgumentException.class, () -> same.rise(0, 0.123));
    }

    private static ObservedHead point(FlowProblem problem) {
        return new ObservedHead(problem.aquifer(), POINT[0], POINT[1], problem.nearFields());
    }

    private static UnitResponses responses(FlowProblem problem) {
        ObservedHead point = point(problem);
        return UnitResponses.of(problem, List.of(point), END, 1);
    }
}
