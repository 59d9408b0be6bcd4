package org.headfall.solver.analytic.function;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.headfall.solver.analytic.function.ReferenceTable.assertRounds;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class ModifiedBesselTest {
    private static final Map<String, DoubleUnaryOperator> FUNCTIONS = Map.of(
            "K0", ModifiedBessel::k0,
            "K1", ModifiedBessel::k1,
            "I0", ModifiedBessel::i0,
            "I1", ModifiedBessel::i1,
            "expx_K0", ModifiedBessel::scaledK0,
            "x_K1", x -> x * ModifiedBessel.k1(x));

    @Test
    void agreesWithEveryRecomputedRow() {
        int compared = 0;
        for (var row : ReferenceTable.read("bessel_erfc.csv", 249).rows()) {
            var function = FUNCTIONS.get(row.text("function"));
            if (function != null) {
                assertRounds(row.text("value_10dig"), function.applyAsDouble(row.number("x")), row);
                compared++;
            }
        }
        assertTrue(compared > 100, "values compared: " + compared);
    }

    /** The Wronskian, equation 10.28.2 of the NIST Digital Library of Mathematical Functions. */
    @Test
    void obeysTheWronskian() {
        for (double x = 1e-8; x < 300; x *= 1.3) {
            double wronskian =
                    ModifiedBessel.i0(x) * ModifiedBessel.k1(x) + ModifiedBessel.i1(x) * ModifiedBessel.k0(x);
            assertRelative(1 / x, wronskian, 1e-12, "x = " + x);
        }
    }

    @Test
    void scaledFunctionsSurviveLargeArguments() {
        double x = 1e5;
        double asymptotic = Math.sqrt(Math.PI / (2 * x)) * (1 - 1 / (8 * x) + 9 / (128 * x * x));
        assertRelative(asymptotic, ModifiedBessel.scaledK0(x), 1e-13, "x = " + x);
        assertRelative(1e-100, 1 / ModifiedBessel.scaledK1(1e-100), 1e-13, "x = 1e-100");
    }

    @Test
    void refusesArgumentsOutsideItsRange() {
        assertThrows(IllegalArgumentException.class, () -> ModifiedBessel.k0(0));
        assertThrows(IllegalArgumentException.class, () -> ModifiedBessel.k1(-1));
        assertThrows(IllegalArgumentException.class, () -> ModifiedBessel.i0(-1));
        assertThrows(IllegalArgumentException.class, () -> ModifiedBessel.i1(Double.NaN));
    }
}
