package org.headfall.solver.analytic.side;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.headfall.solver.analytic.side.SideCondition.FIXED_HEAD;
import static org.headfall.solver.analytic.side.SideCondition.NO_FLOW;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.headfall.solver.analytic.AnisotropicTheisSolution;
import org.headfall.solver.analytic.DrawdownField;
import org.headfall.solver.analytic.HantushJacobSolution;
import org.headfall.solver.analytic.PumpedBore;
import org.headfall.solver.analytic.TheisSolution;
import org.headfall.solver.analytic.UnboundedSolution;
import org.headfall.solver.schedule.StepSchedule;
import org.junit.jupiter.api.Test;

/** Image bores (Ferris and others 1962). */
class ImageSolutionsTest {
    private static final double T = 250;
    private static final double S = 2e-4;
    private static final double WIDTH = 1000;
    private static final TheisSolution THEIS = new TheisSolution(T, S);
    private static final PumpedBore BORE = new PumpedBore(300, 400, 800.0);

    /**
     * Shammas and Wang (2011), Example 3.8, bore 1000 ft from a stream, T = 3.2e4 gpd/ft, Q = 700 gpm; recomputed, in feet.
     * The book prints 2.56 ft at 1500 ft from the stream because it takes that as the distance to the bore: 8.07 ft.
     */
    @Test
    void reproducesShammasAndWangBesideAStream() {
        double transmissivity = 3.2e4 * 231 / 1728;
        var field = new HalfPlaneSolution(new TheisSolution(transmissivity, 1e-5), FIXED_HEAD);
        var bore = new PumpedBore(1000, 0, 700 * 192.5);
        assertRelative(38.106, field.drawdown(bore, 1000, 1, 1e5), 1e-4, "in the bore");
        assertRelative(5.5078, field.drawdown(bore, 500, 0, 1e5), 1e-4, "500 ft from the stream");
        assertRelative(8.0687, field.drawdown(bore, 1500, 0, 1e5), 1e-4, "1500 ft from the stream");
    }

    @Test
    void everySideKeepsItsCondition() {
        for (SideCondition first : SideCondition.values()) {
            for (SideCondition second : SideCondition.values()) {
                for (UnboundedSolution aquifer : aquifers()) {
                    var half = new HalfPlaneSolution(aquifer, first);
                    var quarter = new QuarterPlaneSolution(aquifer, first, second);
                    var strip = new StripSolution(aquifer, WIDTH, first, second);
                    assertSide(first, half, 0, 350, 1, 0);
                    assertSide(first, quarter, 0, 350, 1, 0);
                    assertSide(second, quarter, 250, 0, 0, 1);
                    assertSide(first, strip, 0, 350, 1, 0);
                    assertSide(second, strip, WIDTH, 350, -1, 0);
                }
            }
        }
    }

    private static UnboundedSolution[] aquifers() {
        return new UnboundedSolution[] {
            THEIS, new HantushJacobSolution(T, S, 1500), AnisotropicTheisSolution.alongAxes(400, 90, S)
        };
    }

    /** No drawdown on a side of fixed head; no slope across one without flow, by the one-sided difference of order two. */
    private static void assertSide(SideCondition side, DrawdownField field, double x, double y, int inX, int inY) {
        double scale = field.drawdown(BORE, 310, 400, 0.7);
        double onSide = field.drawdown(BORE, x, y, 0.7);
        if (side == FIXED_HEAD) {
            assertEquals(0, onSide, 1e-13 * scale, field::toString);
        } else {
            double near = field.drawdown(BORE, x + inX, y + inY, 0.7);
            double far = field.drawdown(BORE, x + 2 * inX, y + 2 * inY, 0.7);
            assertEquals(0, (4 * near - far - 3 * onSide) / 2, 1e-6 * scale, field::toString);
            assertTrue(onSide > 0, field::toString);
        }
    }

    @Test
    void bothEndsCanBeExchanged() {
        long seed = 815;
        Random random = new Random(seed);
        var fields = new DrawdownField[] {
            new HalfPlaneSolution(THEIS, FIXED_HEAD),
            new QuarterPlaneSolution(THEIS, NO_FLOW, FIXED_HEAD),
            new StripSolution(THEIS, WIDTH, FIXED_HEAD, NO_FLOW),
            new StripSolution(new HantushJacobSolution(T, S, 900), WIDTH, NO_FLOW, NO_FLOW),
            new TwoZoneSolution(T, 3 * T, T / S)
        };
        for (DrawdownField field : fields) {
            double ax = WIDTH * random.nextDouble();
            double ay = WIDTH * random.nextDouble();
            double bx = WIDTH * random.nextDouble();
            double by = WIDTH * random.nextDouble();
            double forth = field.drawdown(new PumpedBore(ax, ay, 500.0), bx, by, 2);
            double back = field.drawdown(new PumpedBore(bx, by, 500.0), ax, ay, 2);
            assertRelative(forth, back, 1e-11, field + ", seed " + seed);
        }
    }

    /**
     * The strip as {@code Q/S} times the time integral of a kernel along y and an eigenfunction series across, an independent
     * route: sin for fixed heads, cos for no flow.
     */
    @Test
    void stripAgreesWithItsEigenfunctions() {
        for (SideCondition side : SideCondition.values()) {
            var strip = new StripSolution(THEIS, WIDTH, side, side);
            for (double time : new double[] {0.05, 0.5, 5}) {
                double expected = byEigenfunctions(side, 550, 520, time);
                assertRelative(expected, strip.drawdown(BORE, 550, 520, time), 1e-6, side + " at " + time);
            }
        }
    }

    private static double byEigenfunctions(SideCondition side, double x, double y, double time) {
        int steps = 20000;
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            // The midpoint rule in the root of time meets a smooth integrand.
            double root = Math.sqrt(time) * (i + 0.5) / steps;
            double spread = 4 * T * root * root / S;
            double alongY = Math.exp(-Math.pow(y - BORE.y(), 2) / spread) / Math.sqrt(Math.PI * spread);
            sum += across(side, x, spread / 4) * alongY * 2 * root * Math.sqrt(time) / steps;
        }
        return 800 / S * sum;
    }

    private static double across(SideCondition side, double x, double diffusedSquare) {
        double sum = side == NO_FLOW ? 1 / WIDTH : 0;
        for (int n = 1; n < 4000; n++) {
            double k = n * Math.PI / WIDTH;
            double fading = Math.exp(-k * k * diffusedSquare);
            double shape = side == NO_FLOW
                    ? Math.cos(k * x) * Math.cos(k * BORE.x())
                    : Math.sin(k * x) * Math.sin(k * BORE.x());
            sum += 2 / WIDTH * shape * fading;
            if (fading < 1e-18) {
                break;
            }
        }
        return sum;
    }

    /** The mixed strip is half of a strip of twice the width between like sides, with two bores of the same sign. */
    @Test
    void mixedStripIsHalfOfASymmetricOneOfTwiceTheWidth() {
        var mixed = new StripSolution(THEIS, WIDTH, FIXED_HEAD, NO_FLOW);
        var turned = new StripSolution(THEIS, WIDTH, NO_FLOW, FIXED_HEAD);
        var wide = new StripSolution(THEIS, 2 * WIDTH, FIXED_HEAD, FIXED_HEAD);
        var mirrored = new PumpedBore(2 * WIDTH - BORE.x(), BORE.y(), BORE.rates());
        var flipped = new PumpedBore(WIDTH - BORE.x(), BORE.y(), BORE.rates());
        double expected = wide.drawdown(BORE, 550, 520, 20) + wide.drawdown(mirrored, 550, 520, 20);
        assertRelative(expected, mixed.drawdown(BORE, 550, 520, 20), 1e-11, "mixed");
        assertRelative(expected, turned.drawdown(flipped, WIDTH - 550, 520, 20), 1e-11, "turned");
    }

    @Test
    void wideStripIsAHalfPlaneAndRatesAreSuperposed() {
        var half = new HalfPlaneSolution(THEIS, NO_FLOW);
        var strip = new StripSolution(THEIS, 1e6, NO_FLOW, FIXED_HEAD);
        var bore = new PumpedBore(300, 400, new StepSchedule(new double[] {1, 2}, new double[] {800, 200}));
        double expected = half.drawdown(BORE, 100, 380, 2) - 0.75 * half.drawdown(BORE, 100, 380, 1);
        assertRelative(expected, half.drawdown(bore, 100, 380, 3), 1e-13, "half-plane");
        assertRelative(expected, strip.drawdown(bore, 100, 380, 3), 1e-13, "strip");
        assertEquals(0, strip.drawdown(bore, 100, 380, 1));
    }

    @Test
    void refusesPointsOutsideAndAquifersAskew() {
        var strip = new StripSolution(THEIS, WIDTH, FIXED_HEAD, FIXED_HEAD);
        var error = assertThrows(IllegalArgumentException.class, () -> strip.drawdown(BORE, 1200, 0, 1));
        assertTrue(error.getMessage().contains("x must") && error.getMessage().contains("1200"), error.getMessage());
        var half = new HalfPlaneSolution(THEIS, FIXED_HEAD);
        assertThrows(IllegalArgumentException.class, () -> half.drawdown(new PumpedBore(-1, 0, 1.0), 1, 1, 1));
        var quarter = new QuarterPlaneSolution(THEIS, FIXED_HEAD, NO_FLOW);
        assertThrows(IllegalArgumentException.class, () -> quarter.drawdown(BORE, 1, -1, 1));
        var askew = new AnisotropicTheisSolution(100, 100, 20, S);
        assertThrows(IllegalArgumentException.class, () -> new HalfPlaneSolution(askew, NO_FLOW));
        assertThrows(IllegalArgumentException.class, () -> new StripSolution(THEIS, 0, NO_FLOW, NO_FLOW));
    }
}
