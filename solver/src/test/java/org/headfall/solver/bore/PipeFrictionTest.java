package org.headfall.solver.bore;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRounds;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Friction in pipes against printed factors and against a general solver. */
class PipeFrictionTest {

    private static double factor(double reynolds, double relativeRoughness) {
        return PipeFriction.number(reynolds, relativeRoughness) / (reynolds * reynolds);
    }

    /**
     * Smooth pipes by Prandtl's formula: White, Fluid Mechanics (7th ed. 2011), table beside equation 6.38, from memory.
     * Prandtl's and Colebrook's smooth formula differ in the third digit (2.51 against 10^0.4), so half a unit of the
     * last printed digit is doubled.
     */
    @ParameterizedTest
    @CsvSource({"4000, 0.0399", "1e4, 0.0309", "1e5, 0.0180", "1e6, 0.0116", "1e7, 0.0081", "1e8, 0.0059"})
    void smoothPipes(double reynolds, double printed) {
        assertEquals(printed, factor(reynolds, 0), 1e-4);
    }

    /** Fully rough flow: the same book, table beside equation 6.47, from memory. */
    @ParameterizedTest
    @CsvSource({"0.00001, 0.00806", "0.0001, 0.0120", "0.001, 0.0196", "0.01, 0.0379", "0.05, 0.0716"})
    void fullyRoughPipes(double relativeRoughness, String printed) {
        assertRounds(printed, factor(1e12, relativeRoughness), relativeRoughness);
    }

    /** Poiseuille: f = 64/Re. */
    @Test
    void laminarFlow() {
        assertEquals(0.064, factor(1000, 0.03), 1e-15);
        assertEquals(0, PipeFriction.number(0, 0.03));
    }

    /** Newton's root is that of Brent's method of Commons Math. */
    @Test
    void turbulentFlowSolvesColebrooksEquation() {
        for (double roughness : new double[] {0, 1e-6, 1e-4, 3e-3, 0.05}) {
            for (double reynolds = 4000; reynolds < 1e9; reynolds *= 3.7) {
                double re = reynolds;
                double root = new BrentSolver(1e-14, 1e-14)
                        .solve(200, x -> x + 2 * Math.log10(roughness / 3.7 + 2.51 * x / re), 1, 30);
                assertEquals(1 / (root * root), factor(reynolds, roughness), 1e-11, "Re " + re + " k/D " + roughness);
            }
        }
    }

    @Test
    void frictionIsSmoothAndGrowsThroughAllRegimes() {
        for (double roughness : new double[] {0, 1e-4, 0.01, 0.05}) {
            for (double reynolds = 10; reynolds < 1e6; reynolds *= 1.01) {
                double step = 1e-5 * reynolds;
                double rise = PipeFriction.number(reynolds + step, roughness)
                        - PipeFriction.number(reynolds - step, roughness);
                double slope = PipeFriction.slope(reynolds, roughness);
                assertTrue(slope > 0, "Re " + reynolds);
                assertEquals(slope, rise / (2 * step), 2e-4 * slope, "Re " + reynolds + " k/D " + roughness);
            }
            for (double border : new double[] {2000, 4000}) {
                double below = Math.nextDown(border);
                double above = Math.nextUp(border);
                assertEquals(PipeFriction.number(below, roughness), PipeFriction.number(above, roughness), 1e-4);
                assertEquals(PipeFriction.slope(below, roughness), PipeFriction.slope(above, roughness), 1e-6);
            }
        }
    }

    /**
     * A worked case of Darcy and Weisbach with Colebrook: 20 L/s through 500 m of 150 mm steel pipe (0.045 mm) at 20 °C,
     * nu 1.004e-6 m²/s: Re 169,089, f 0.01809, loss 3.937 m, computed apart; velocity head v²/2g by hand 0.06531 m.
     */
    @Test
    void lossOfAPipe() {
        Pipe pipe = new Pipe(0.150, 500, 0.045e-3, 1.004e-6 * 86_400);
        double discharge = 0.02 * 86_400;
        assertEquals(169_089, pipe.reynolds(discharge), 1);
        assertEquals(3.937 + 0.06531, pipe.loss(discharge), 5e-4);
        assertEquals(0.01809, factor(pipe.reynolds(discharge), 0.045 / 150), 5e-6);
        double slope = (pipe.loss(discharge + 1) - pipe.loss(discharge - 1)) / 2;
        assertEquals(slope, pipe.slope(discharge), 1e-7 * slope);
        assertEquals(0, pipe.loss(0));
    }

    /** Hagen and Poiseuille: loss = 128 nu L Q / (pi g D⁴), 1 L/h through 10 m of 10 mm pipe. */
    @Test
    void laminarLossOfAPipe() {
        double viscosity = 1.0e-6;
        double discharge = 1e-3 / 3600;
        double expected = 128 * viscosity * 10 * discharge / (Math.PI * 9.80665 * Math.pow(0.01, 4));
        double velocity = discharge / (Math.PI * 0.25e-4);
        Pipe pipe = new Pipe(0.01, 10, 0, viscosity * 86_400);
        assertEquals(expected + velocity * velocity / (2 * 9.80665), pipe.loss(discharge * 86_400), 1e-9 * expected);
    }

    @Test
    void roughnessBeyondTheFormulaIsRefused() {
        var thrown = assertThrows(IllegalArgumentException.class, () -> new Pipe(0.1, 10, 0.006, 0.08));
        assertTrue(thrown.getMessage().contains("0.006 m"), thrown.getMessage());
        assertThrows(IllegalArgumentException.class, () -> new Pipe(0, 10, 0, 0.08));
        assertThrows(IllegalArgumentException.class, () -> new Pipe(0.1, Double.NaN, 0, 0.08));
    }
}
