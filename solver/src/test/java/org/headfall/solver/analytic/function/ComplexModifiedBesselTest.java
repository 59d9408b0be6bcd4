package org.headfall.solver.analytic.function;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class ComplexModifiedBesselTest {
    @Test
    void agreesWithTheRealFunctionsOnTheRealAxis() {
        for (double x = 1e-9; x < 1e4; x *= 1.3) {
            var bessel = ComplexModifiedBessel.at(new Complex(x));
            assertRelative(ModifiedBessel.scaledK0(x), bessel.scaledK0().getReal(), 1e-13, "x = " + x);
            assertRelative(ModifiedBessel.scaledK1(x), bessel.scaledK1().getReal(), 1e-13, "x = " + x);
            assertEquals(0, bessel.scaledK0().getImaginary());
        }
    }

    /** The series and the continued fraction meet at |z| = 2 from the real to near the imaginary axis. */
    @Test
    void isContinuousWhereTheMethodChanges() {
        for (double angle = 0; angle < 1.57; angle += 0.05) {
            Complex direction = new Complex(Math.cos(angle), Math.sin(angle));
            var inside = ComplexModifiedBessel.at(direction.multiply(2 * (1 - 1e-14)));
            var outside = ComplexModifiedBessel.at(direction.multiply(2 * (1 + 1e-14)));
            assertClose(inside.scaledK0(), outside.scaledK0(), angle);
            assertClose(inside.scaledK1(), outside.scaledK1(), angle);
        }
    }

    private static void assertClose(Complex expected, Complex actual, double angle) {
        assertEquals(0, expected.subtract(actual).abs() / expected.abs(), 2e-13, "angle " + angle);
    }

    @Test
    void refusesTheLeftHalfPlane() {
        assertThrows(IllegalArgumentException.class, () -> ComplexModifiedBessel.at(new Complex(-1, 1)));
    }
}
