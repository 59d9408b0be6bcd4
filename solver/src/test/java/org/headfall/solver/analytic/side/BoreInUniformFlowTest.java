package org.headfall.solver.analytic.side;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.headfall.solver.analytic.ThiemSolution;
import org.junit.jupiter.api.Test;

class BoreInUniformFlowTest {
    private static final BoreInUniformFlow FLOW = new BoreInUniformFlow(300, 2e-3, 1200);

    /** At the stagnation point the slope of the drawdown cone cancels the regional slope. */
    @Test
    void waterStandsStillAtTheStagnationPoint() {
        double distance = FLOW.stagnationDistance();
        double cone = new ThiemSolution(300).drawdownDifference(1200, distance - 0.01, distance + 0.01) / 0.02;
        assertRelative(2e-3, cone, 1e-8, "slope");
    }

    @Test
    void captureZoneTakesItsKnownWidths() {
        assertRelative(1200 / (300 * 2e-3), FLOW.captureWidth(), 1e-14, "far up-gradient");
        assertRelative(FLOW.widthAtBore(), FLOW.widthAt(0), 1e-12, "abreast of the bore");
        assertRelative(FLOW.captureWidth(), FLOW.widthAt(-1e9), 1e-5, "far up-gradient");
        assertEquals(0, FLOW.widthAt(FLOW.stagnationDistance()));
        assertEquals(0, FLOW.widthAt(1e6));
        assertEquals(0, FLOW.widthAt(FLOW.stagnationDistance() * (1 - 1e-12)), 2e-3);
    }

    /** All water inside the dividing line reaches the bore: the flow across any line up-gradient of it is Q. */
    @Test
    void exactlyTheRateFlowsThroughTheCaptureZone() {
        for (double x : new double[] {-5000, -400, -20}) {
            double half = FLOW.widthAt(x) / 2;
            double regional = 300 * 2e-3 * 2 * half;
            double towardsBore = 1200 / Math.PI * Math.atan2(half, -x);
            assertRelative(1200, regional + towardsBore, 1e-10, "x = " + x);
        }
    }

    /** Travel time by following the water along the axis. */
    @Test
    void travelTimeIsTheIntegralOverVelocity() {
        double sum = 0;
        int steps = 100_000;
        double drainable = 0.15 * 30;
        for (int i = 0; i < steps; i++) {
            double x = 500 * (i + 0.5) / steps;
            double flow = 300 * 2e-3 + 1200 / (2 * Math.PI * x);
            sum += drainable / flow * 500 / steps;
        }
        assertRelative(sum, FLOW.travelTime(500, drainable), 1e-7, "travel time");
    }

    @Test
    void refusesArgumentsThatAreNotPositive() {
        assertThrows(IllegalArgumentException.class, () -> new BoreInUniformFlow(300, 0, 1200));
        assertThrows(IllegalArgumentException.class, () -> FLOW.travelTime(0, 1));
        assertThrows(IllegalArgumentException.class, () -> FLOW.travelTime(1, -1));
    }
}
