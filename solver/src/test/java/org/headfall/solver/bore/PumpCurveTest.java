package org.headfall.solver.bore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PumpCurveTest {

    @Test
    void aStraightCurveStaysStraight() {
        PumpCurve curve = new PumpCurve(new double[] {0, 500, 2000}, new double[] {90, 80, 50});
        for (double flow = 0; flow <= 2000; flow += 125) {
            assertEquals(90 - flow / 50, curve.head(flow), 1e-12);
            assertEquals(-1.0 / 50, curve.slope(flow), 1e-12);
        }
    }

    /** A parabola, the usual shape of a centrifugal pump. */
    @Test
    void aParabolaIsFollowed() {
        double[] flows = {0, 300, 600, 900, 1200, 1500, 1800};
        double[] heads = Arrays.stream(flows).map(q -> 120 - 20e-6 * q * q).toArray();
        PumpCurve curve = new PumpCurve(flows, heads);
        for (double flow = 0; flow <= 1800; flow += 37) {
            assertEquals(120 - 20e-6 * flow * flow, curve.head(flow), 1e-10);
        }
        assertEquals(1800, curve.largestFlow());
        assertEquals(120, curve.head(0));
    }

    @Test
    void noCurveThatFallsRisesBetweenItsPoints() {
        Random random = new Random(5);
        for (int trial = 0; trial < 200; trial++) {
            int n = 3 + random.nextInt(6);
            double[] flows = new double[n];
            double[] heads = new double[n];
            heads[0] = 100;
            for (int i = 1; i < n; i++) {
                flows[i] = flows[i - 1] + Math.exp(3 * random.nextGaussian());
                heads[i] = heads[i - 1] - (random.nextInt(4) == 0 ? 0 : Math.exp(2 * random.nextGaussian()));
            }
            PumpCurve curve = new PumpCurve(flows, heads);
            double before = curve.head(0);
            for (int step = 1; step <= 500; step++) {
                double flow = Math.min(step / 500.0 * curve.largestFlow(), curve.largestFlow());
                double head = curve.head(flow);
                assertTrue(head <= before + 1e-10, "trial " + trial + " flow " + flow);
                assertTrue(curve.slope(flow) <= 0);
                before = head;
            }
            for (int i = 0; i < n; i++) {
                assertEquals(heads[i], curve.head(flows[i]), 1e-10);
            }
        }
    }

    @Test
    void slopeIsTheDerivative() {
        PumpCurve curve = new PumpCurve(new double[] {0, 400, 1000, 1700}, new double[] {80, 76, 60, 20});
        for (double flow = 10; flow < 1690; flow += 13) {
            assertEquals((curve.head(flow + 1e-3) - curve.head(flow - 1e-3)) / 2e-3, curve.slope(flow), 1e-7);
        }
    }

    @Test
    void faultyCurvesAreNamedWithPointAndValue() {
        assertMessage("84 m after 80 m in point 3", new double[] {0, 1, 2}, new double[] {90, 80, 84});
        assertMessage("at least 3 points", new double[] {0, 1}, new double[] {90, 80});
        assertMessage("begin at no flow, found 5 m3/d", new double[] {5, 10, 20}, new double[] {90, 80, 70});
        assertMessage("in point 3", new double[] {0, 10, 10}, new double[] {90, 80, 70});
        assertMessage("NaN m in point 2", new double[] {0, 10, 20}, new double[] {90, Double.NaN, 70});
    }

    private static void assertMessage(String part, double[] flows, double[] heads) {
        var thrown = assertThrows(IllegalArgumentException.class, () -> new PumpCurve(flows, heads));
        assertTrue(thrown.getMessage().contains(part), thrown.getMessage());
    }
}
