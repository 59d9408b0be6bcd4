package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The straight lines of Cooper and Jacob (1946) and of Thiem (1906). */
class StraightLineSolutionsTest {
    private static final double SECONDS_PER_DAY = 86400;
    private static final double MINUTES_PER_DAY = 1440;

    /** Davis (2010), Water and Wastewater Engineering, Example 4-3: 0.49 m at 1 min, 2.37 m at 100 min, t0 = 0.30 min. */
    @Test
    void findsTheAquiferOfDavisFromItsLine() {
        var aquifer = CooperJacobSolution.fromLine(
                2.21e-2 * SECONDS_PER_DAY, 68.58, (2.37 - 0.49) / 2, 0.30 / MINUTES_PER_DAY);
        assertRelative(0.0043079, aquifer.transmissivity() / SECONDS_PER_DAY, 1e-4, "recomputed T");
        assertRelative(4.31e-3, aquifer.transmissivity() / SECONDS_PER_DAY, 5e-3, "printed T");
        assertRelative(3.7e-5, aquifer.storativity(), 5e-3, "printed S");
        // The recomputed S uses the rounded 2.25; exact is 4 exp(-0.5772) = 2.2458.
        assertRelative(3.7096e-05 * 2.2458379 / 2.25, aquifer.storativity(), 1e-4, "recomputed S");
    }

    /** Korendijk test of Kruseman and de Ridder (1990), from memory: 0.375 m a cycle at 30 m, t0 = 0.25 min. */
    @Test
    void findsTheAquiferOfKorendijkFromItsLine() {
        var aquifer = CooperJacobSolution.fromLine(788, 30, 0.375, 0.25 / MINUTES_PER_DAY);
        assertRelative(385.04, aquifer.transmissivity(), 1e-4, "recomputed T");
        assertRelative(1.7e-4, aquifer.storativity(), 0.02, "printed S");
    }

    /** Same test, steady drawdown at 0.8, 30 and 90 m; printed transmissivities 370 and (from memory) 396 m²/d. */
    @Test
    void findsTheAquiferOfKorendijkFromSteadyDrawdown() {
        assertRelative(
                370.38, ThiemSolution.fromDifference(788, 30, 90, 1.088 - 0.716).transmissivity(), 1e-4, "30/90 m");
        assertRelative(
                395.94,
                ThiemSolution.fromDifference(788, 0.8, 30, 2.236 - 1.088).transmissivity(),
                1e-4,
                "0.8/30 m");
    }

    @Test
    void lineDepartsFromTheisByTheStatedErrors() {
        var line = new CooperJacobSolution(300, 1e-4);
        var theis = new TheisSolution(300, 1e-4);
        double[] arguments = {0.01, 0.05, 0.1};
        double[] errors = {-0.0025, -0.020, -0.054};
        for (int i = 0; i < arguments.length; i++) {
            double time = 100 * 100 * 1e-4 / (4 * 300 * arguments[i]);
            double error = line.drawdown(500, 100, time) / theis.drawdown(500, 100, time) - 1;
            assertEquals(errors[i], error, 5e-4, "u = " + arguments[i]);
        }
        double edge = 100 * 100 * 1e-4 / (4 * 300 * 0.01);
        assertTrue(line.appliesAt(100, edge * 1.001));
        assertFalse(line.appliesAt(100, edge * 0.999));
    }

    @Test
    void lineMeetsZeroAtTheRadiusOfInfluence() {
        var line = new CooperJacobSolution(300, 1e-4);
        double radius = line.radiusOfInfluence(2);
        assertEquals(0, line.drawdown(500, radius, 2), 1e-12);
        double true0 = new TheisSolution(300, 1e-4).drawdown(4 * Math.PI * 300, radius, 2);
        assertEquals(0.49, true0, 0.005);
    }

    @Test
    void thiemIsTheLateDifferenceOfTheis() {
        var theis = new TheisSolution(300, 1e-4);
        double difference = theis.drawdown(500, 10, 1e6) - theis.drawdown(500, 200, 1e6);
        assertRelative(difference, new ThiemSolution(300).drawdownDifference(500, 10, 200), 1e-8, "late");
    }

    @Test
    void refusesArgumentsOutsideTheirRange() {
        assertThrows(IllegalArgumentException.class, () -> CooperJacobSolution.fromLine(1, 1, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> ThiemSolution.fromDifference(1, 90, 30, 1));
        assertThrows(IllegalArgumentException.class, () -> new ThiemSolution(1).drawdownDifference(1, 0, 1));
    }
}
