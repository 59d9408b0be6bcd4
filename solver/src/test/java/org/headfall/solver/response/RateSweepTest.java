package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Random;
import org.headfall.solver.linear.WorkerTeam;
import org.junit.jupiter.api.Test;

/** The reference is superposition step by step on the table of responses. */
class RateSweepTest {

    private static final int STEPS = 120;
    private static final double MONTH = 30.4375;
    private static final int SETS = 70;

    private static double rate(int set, int step, int cause) {
        return 1000 * new Random(7_919L * set + 104_729L * step + cause).nextDouble();
    }

    /** Drawdown of each set at the end of some steps: within 0.1 mm for 1 L/s, with one thread and with two. */
    @Test
    void agreesWithTheTableAtEveryReceptor() {
        UnitResponses responses = UnitResponses.of(
                StationResponsesTest.field(StationResponsesTest.pumped(1), StationResponsesTest.pumped(1)),
                List.of(),
                STEPS * MONTH,
                1);
        double[][] found = swept(responses, 1);
        assertArrayEquals(found, swept(responses, 2));
        for (int set : new int[] {0, 31, 32, 69}) {
            for (int step : new int[] {0, 1, 40, STEPS - 1}) {
                for (int receptor = 0; receptor < responses.receptors(); receptor++) {
                    double expected = 0;
                    for (int cause = 0; cause < responses.causes(); cause++) {
                        double before = 0;
                        for (int k = 0; k <= step; k++) {
                            double now = rate(set, k, cause);
                            expected += (now - before) * responses.at(receptor, cause, (step + 1 - k) * MONTH);
                            before = now;
                        }
                    }
                    assertEquals(
                            expected,
                            found[set][step * responses.receptors() + receptor],
                            1e-4 * 1000 / 86.4,
                            "set " + set + " step " + step + " receptor " + receptor);
                }
            }
        }
        assertEquals(0, new RateSweep(responses, MONTH, STEPS).misfit(), 1e-4 / 86.4);
    }

    private static double[][] swept(UnitResponses responses, int threads) {
        double[][] found = new double[SETS][STEPS * responses.receptors()];
        try (WorkerTeam team = new WorkerTeam(threads)) {
            new RateSweep(responses, MONTH, STEPS)
                    .run(
                            SETS,
                            RateSweepTest::rate,
                            (first, count, step, drawdown) -> {
                                for (int s = 0; s < count; s++) {
                                    for (int r = 0; r < responses.receptors(); r++) {
                                        found[first + s][step * responses.receptors() + r] =
                                                drawdown[r * RateSweep.BLOCK + s];
                                    }
                                }
                            },
                            team);
        }
        return found;
    }
}
