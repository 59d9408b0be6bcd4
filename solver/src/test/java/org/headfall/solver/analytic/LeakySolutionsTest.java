package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Leakage without storage in the bed (Hantush and Jacob 1955, de Glee 1930) and with it (Hantush 1960). */
class LeakySolutionsTest {
    private static final double T = 200;
    private static final double S = 3e-4;
    private static final double RESISTANCE = 2000;
    private static final double RATE = 900;

    /** Fetter (2001), Applied Hydrogeology, 4th ed., p. 165: inputs as printed, answers recomputed. */
    @Test
    void reproducesFetterExample() {
        var leaky = new HantushJacobSolution(0.73 * 5.2, 0.0035, 1.1 / 5.5e-5);
        double[] distances = {1.5, 5.5, 10, 25, 75, 150};
        double[] recomputed = {4.0933, 2.572, 1.88, 0.87463, 0.079119, 0.00053519};
        for (int i = 0; i < distances.length; i++) {
            assertRelative(recomputed[i], leaky.drawdown(28, distances[i], 1), 1e-4, "r = " + distances[i]);
        }
    }

    @Test
    void endsInTheSteadyStateOfDeGlee() {
        var leaky = new HantushJacobSolution(T, S, RESISTANCE);
        double factor = leaky.steady().leakageFactor();
        for (double distance : new double[] {0.1, 10, factor}) {
            double steady = leaky.steady().drawdown(RATE, distance);
            assertRelative(steady, leaky.drawdown(RATE, distance, 5 * S * RESISTANCE), 1.5e-3, "r = " + distance);
            assertRelative(steady, leaky.drawdown(RATE, distance, 100 * S * RESISTANCE), 1e-12, "r = " + distance);
        }
    }

    /** The flow towards the bore at a distance is {@code -2 pi r T ds/dr}. */
    @Test
    void shareInTheAquiferIsTheSlopeOfDrawdown() {
        var steady = new DeGleeSolution(T, RESISTANCE);
        for (double distance = 1; distance < 5000; distance *= 2.7) {
            double h = 1e-4 * distance;
            double slope = (steady.drawdown(RATE, distance + h) - steady.drawdown(RATE, distance - h)) / (2 * h);
            double flow = -2 * Math.PI * distance * T * slope;
            assertEquals(steady.shareInAquifer(distance), flow / RATE, 1e-7, "r = " + distance);
        }
    }

    @Test
    void bedWithoutStorageLeaksAtOnceOrNotAtAll() {
        var open = new StoringBedSolution(T, S, RESISTANCE, 0, BedTop.FIXED_HEAD);
        var closed = new StoringBedSolution(T, S, RESISTANCE, 0, BedTop.CLOSED);
        for (double time = 0.01; time < 1e5; time *= 4) {
            double leaky = new HantushJacobSolution(T, S, RESISTANCE).drawdown(RATE, 50, time);
            double theis = new TheisSolution(T, S).drawdown(RATE, 50, time);
            assertRelative(leaky, open.drawdown(RATE, 50, time), 1e-10, "t = " + time);
            assertRelative(theis, closed.drawdown(RATE, 50, time), 1e-10, "t = " + time);
        }
    }

    @Test
    void earlyDrawdownKnowsNothingOfTheTop() {
        for (BedTop top : BedTop.values()) {
            var bed = new StoringBedSolution(T, S, RESISTANCE, 1e-3, top);
            for (double share : new double[] {1e-4, 1e-3, 1e-2, 0.05}) {
                double time = share * bed.bedResponseTime();
                double full = bed.drawdown(RATE, 80, time);
                assertRelative(bed.earlyDrawdown(RATE, 80, time), full, 1e-5, top + " at " + time);
            }
            double limit = bed.bedResponseTime() / 10;
            assertRelative(bed.earlyDrawdown(RATE, 80, limit), bed.drawdown(RATE, 80, limit), 2e-3, top + " at limit");
        }
    }

    @Test
    void lateDrawdownCountsAThirdOfTheBedOrAllOfIt() {
        // A bed so resistant that the aquifer is far from steady at the time.
        double resistance = 1e6;
        var open = new StoringBedSolution(T, S, resistance, 1e-4, BedTop.FIXED_HEAD);
        double openTime = 5 * open.bedResponseTime();
        assertRelative(open.lateDrawdown(RATE, 80, openTime), open.drawdown(RATE, 80, openTime), 1e-3, "fixed head");
        var closed = new StoringBedSolution(T, S, RESISTANCE, 1e-3, BedTop.CLOSED);
        double closedTime = 10 * closed.bedResponseTime();
        assertRelative(
                closed.lateDrawdown(RATE, 80, closedTime), closed.drawdown(RATE, 80, closedTime), 5e-3, "closed");
    }

    @Test
    void storageInTheBedLiesBetweenNoLeakAndInstantLeak() {
        var leaky = new HantushJacobSolution(T, S, RESISTANCE);
        var open = new StoringBedSolution(T, S, RESISTANCE, 2e-3, BedTop.FIXED_HEAD);
        var closed = new StoringBedSolution(T, S, RESISTANCE, 2e-3, BedTop.CLOSED);
        for (double time = 0.01; time < 1e3; time *= 2) {
            double stored = open.drawdown(RATE, 80, time);
            assertTrue(stored <= leaky.drawdown(RATE, 80, time) * (1 + 1e-9), "t = " + time);
            assertTrue(stored <= closed.drawdown(RATE, 80, time) * (1 + 1e-9), "t = " + time);
        }
        double steady = leaky.steady().drawdown(RATE, 80);
        assertRelative(steady, open.drawdown(RATE, 80, 1e6), 1e-5, "steady");
    }

    @Test
    void refusesArgumentsOutsideTheirRange() {
        assertThrows(IllegalArgumentException.class, () -> new HantushJacobSolution(T, S, 0));
        assertThrows(IllegalArgumentException.class, () -> new DeGleeSolution(0, 1));
        var bad = assertThrows(
                IllegalArgumentException.class, () -> new StoringBedSolution(T, S, RESISTANCE, -1, BedTop.CLOSED));
        assertTrue(bad.getMessage().contains("storativity of the bed")
                && bad.getMessage().contains("-1"));
        assertEquals(0, new HantushJacobSolution(T, S, RESISTANCE).drawdown(RATE, 1, 0));
    }
}
