package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.PointRules;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.api.Test;

/** Pumps with a lowest level, a flowing bore and springs at once, against solving for all of them from the start. */
class RulesMetTest {

    private static final double TOLERANCE = 1e-10;
    private static final double STEP = 4000;
    private static final double DAY = 5000;

    /** Response of each point to a discharge of each that grows evenly, or holds throughout, the step (d/m²). */
    private static double[][] response(Superposition superposition, int points, boolean atOnce) {
        int[] all = IntStream.range(0, points).toArray();
        double[][] response = new double[points][points];
        for (int i = 0; i < points; i++) {
            superposition.onsets(i, all, points, atOnce, response[i]);
        }
        return response;
    }

    private static double[] product(double[][] matrix, double[] values) {
        double[] product = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            for (int j = 0; j < values.length; j++) {
                product[i] += matrix[i][j] * values[j];
            }
        }
        return product;
    }

    private static Operation pumped(double rate) {
        return new Operation.PumpedRate(Schedule.constant(rate), OptionalDouble.of(100));
    }

    /**
     * With random assumptions: pumps that are assumed to get all that they ask for do so, or do not, or no longer do for what
     * the others discharge, and a pump assumed to get less gets all.
     */
    @Test
    void whatMeetsItsRuleAlreadyMakesNoDifference() {
        FlowProblem problem =
                StationResponsesTest.field(pumped(900), new Operation.FreeFlow(99.5), pumped(400), pumped(1500));
        SharedModes modes = StationResponses.fromGiven(
                        problem, List.of(), new double[problem.aquifer().grid().cellCount()], DAY, 1)
                .responses()
                .modes();
        int points = modes.causes();
        Superposition superposition = new Superposition(modes);
        superposition.lookAhead(STEP, new double[points], new double[points]);
        PointRules rules = new PointRules(problem);
        RulesMet met = new RulesMet(rules, superposition, TOLERANCE);
        double[] asked = rules.asked(DAY);
        int[] all = IntStream.range(0, points).toArray();
        Random random = new Random(20_261_126);
        int[] found = new int[3];
        for (int k = 0; k < 400; k++) {
            boolean atOnce = random.nextBoolean();
            double[][] response = response(superposition, points, atOnce);
            // About as much as the pumps need for what they ask, so that little decides whether they get it.
            double[] wanted = new double[points];
            Arrays.setAll(wanted, i -> Double.isNaN(asked[i]) ? 800 * random.nextDouble() : asked[i]);
            double[] offered = product(response, wanted);
            Arrays.setAll(offered, i -> offered[i] + 100 + 0.4 * random.nextDouble());
            double[] assumed = new double[points];
            Arrays.setAll(
                    assumed,
                    i -> wanted[i]
                            * (Double.isNaN(asked[i]) ? random.nextDouble() : Math.min(1, 8 * random.nextDouble())));
            double[] expected = assumed.clone();
            rules.meet(DAY, all, response, offered, expected, TOLERANCE);
            double[] fall = product(response, assumed);
            double[] head = new double[points];
            Arrays.setAll(head, i -> offered[i] - fall[i]);
            double[] before = head.clone();
            double[] further = met.further(DAY, all, atOnce, assumed, head);
            double[] fallAfter = product(response, expected);
            for (int i = 0; i < points; i++) {
                assertEquals(expected[i], assumed[i] + further[i], 1e-5, "point " + i + ", case " + k);
                assertEquals(offered[i] - fallAfter[i], head[i], 1e-8, "head at " + i + ", case " + k);
                boolean got = rules.getsAllAsked(DAY, i, assumed[i], before[i]);
                boolean gets = rules.getsAllAsked(DAY, i, expected[i], head[i]);
                found[0] += got && gets ? 1 : 0;
                found[1] += got && !gets ? 1 : 0;
                found[2] += !got && gets ? 1 : 0;
            }
        }
        assertTrue(Arrays.stream(found).min().orElse(0) > 20, "cases of each kind: " + Arrays.toString(found));
    }
}
