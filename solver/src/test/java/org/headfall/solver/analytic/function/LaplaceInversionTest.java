package org.headfall.solver.analytic.function;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

/** Transform pairs from the tables of Abramowitz and Stegun (1964), chapter 29. */
class LaplaceInversionTest {
    @Test
    void invertsDiffusiveTransformsToTwelveDigits() {
        for (double t = 1e-6; t < 1e8; t *= 2.7) {
            assertRelative(1, LaplaceInversion.at(t, Complex::reciprocal), 1e-12, "1/p at " + t);
            assertRelative(t, LaplaceInversion.at(t, p -> p.multiply(p).reciprocal()), 1e-12, "1/p² at " + t);
            double inverseRoot = LaplaceInversion.at(t, p -> p.sqrt().reciprocal());
            assertRelative(1 / Math.sqrt(Math.PI * t), inverseRoot, 1e-12, "1/sqrt p at " + t);
        }
    }

    @Test
    void invertsTheComplementaryErrorFunction() {
        for (double t = 0.02; t < 1e4; t *= 1.9) {
            double value = LaplaceInversion.at(t, p -> p.sqrt().negate().exp().divide(p));
            assertEquals(ErrorIntegral.complement(0.5 / Math.sqrt(t)), value, 1e-13, "t = " + t);
        }
    }

    @Test
    void invertsTheWellFunctionFromItsTransform() {
        for (double t = 0.05; t < 1e9; t *= 2.3) {
            double value = LaplaceInversion.at(t, LaplaceInversionTest::transformOfTheis);
            assertEquals(WellFunction.of(1 / (4 * t)), value, 1e-11, "t = " + t);
        }
    }

    private static Complex transformOfTheis(Complex p) {
        Complex root = p.sqrt();
        return ComplexModifiedBessel.at(root)
                .scaledK0()
                .multiply(root.negate().exp())
                .multiply(2)
                .divide(p);
    }

    @Test
    void refusesTimesThatAreNotPositive() {
        assertThrows(IllegalArgumentException.class, () -> LaplaceInversion.at(0, Complex::reciprocal));
    }
}
