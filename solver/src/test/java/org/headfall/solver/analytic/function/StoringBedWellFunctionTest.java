package org.headfall.solver.analytic.function;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.headfall.solver.analytic.function.ReferenceTable.assertRounds;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class StoringBedWellFunctionTest {
    @Test
    void agreesWithEveryRecomputedRow() {
        for (var row : ReferenceTable.read("hantush1960_H.csv", 169).rows()) {
            double value = StoringBedWellFunction.of(row.number("u"), row.number("beta"));
            assertRounds(row.text("H_8dig"), value, row);
        }
    }

    /** The Laplace transform in 1/(4u) is {@code 2 K0(sqrt(p + 4 beta sqrt p))/p}. */
    @Test
    void agreesWithTheInversionOfItsTransform() {
        long seed = 1960;
        Random random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            double u = Math.pow(10, -9 + 9 * random.nextDouble());
            double beta = Math.pow(10, -4 + 4 * random.nextDouble());
            double inverted = LaplaceInversion.at(1 / (4 * u), p -> transform(p, beta));
            double value = StoringBedWellFunction.of(u, beta);
            assertEquals(inverted, value, 1e-11 + 1e-10 * value, "u = " + u + ", beta = " + beta + ", seed " + seed);
        }
    }

    private static Complex transform(Complex p, double beta) {
        Complex root = p.add(p.sqrt().multiply(4 * beta)).sqrt();
        Complex scaled = ComplexModifiedBessel.at(root).scaledK0();
        return scaled.multiply(root.negate().exp()).multiply(2).divide(p);
    }

    @Test
    void tendsToTheFunctionOfTheisWithoutStorageInTheBed() {
        for (double u = 1e-8; u < 100; u *= 7) {
            assertEquals(WellFunction.of(u), StoringBedWellFunction.of(u, 0));
            assertRelative(WellFunction.of(u), StoringBedWellFunction.of(u, 1e-12), 1e-8, "u = " + u);
        }
    }

    @Test
    void fallsWithStorageInTheBedDownToNothing() {
        for (double u : new double[] {1e-6, 0.1, 30}) {
            double larger = Double.POSITIVE_INFINITY;
            for (double beta = 1e-3; beta < 1e6; beta *= 3) {
                double value = StoringBedWellFunction.of(u, beta);
                assertEquals(true, value >= 0 && (value < larger || value == 0), "u = " + u + ", beta = " + beta);
                larger = value;
            }
        }
    }

    @Test
    void refusesArgumentsOutsideItsRange() {
        assertThrows(IllegalArgumentException.class, () -> StoringBedWellFunction.of(0, 1));
        assertThrows(IllegalArgumentException.class, () -> StoringBedWellFunction.of(1, -1));
    }
}
