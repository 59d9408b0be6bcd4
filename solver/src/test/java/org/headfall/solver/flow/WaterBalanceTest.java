package org.headfall.solver.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class WaterBalanceTest {

    private static double relative(double in, double out) {
        return new WaterBalance(
                        0,
                        1,
                        List.of(
                                new WaterBalance.Term("storage", WaterBalance.Kind.STORAGE, in, 0),
                                new WaterBalance.Term("bore", WaterBalance.Kind.BORE, 0, out)),
                        0)
                .relativeDiscrepancy();
    }

    @Test
    void theDiscrepancyIsAShareOfWhatPassed() {
        assertEquals(0.25, relative(100, 75), 1e-15);
        assertEquals(0.2, relative(4e-6, 5e-6), 1e-12);
    }

    /** In an aquifer at rest only rounding passes, of which a third may be missing without anything being wrong. */
    @Test
    void anAquiferAtRestHasNone() {
        assertEquals(0, relative(0, 0));
        assertEquals(0, relative(3e-10, 2e-10));
    }
}
