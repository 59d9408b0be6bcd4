package org.headfall.solver.analytic.function;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.headfall.solver.analytic.function.ReferenceTable.assertRounds;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class LargeDiameterWellFunctionTest {
    private static final ReferenceTable TABLE = ReferenceTable.read("papadopulos_cooper.csv", 170);

    @Test
    void agreesWithEveryRecomputedRow() {
        for (var row : TABLE.rows()) {
            double value = LargeDiameterWellFunction.of(row.number("u_w"), row.number("alpha"));
            assertRounds(row.text("F_8dig"), value, row);
        }
    }

    /** Table 1 of Papadopulos and Cooper (1967), quoted from memory, so to 1e-3 only. */
    @Test
    void agreesWithPrintedValuesToOneInAThousand() {
        int compared = 0;
        for (var row : TABLE.rows()) {
            if (!row.text("published").isEmpty()) {
                double value = LargeDiameterWellFunction.of(row.number("u_w"), row.number("alpha"));
                assertRelative(row.number("published"), value, 1e-3, row);
                compared++;
            }
        }
        assertEquals(28, compared);
    }

    @Test
    void startsWithWaterFromTheCasingAndEndsAsTheis() {
        assertRelative(1e-6 / 10, LargeDiameterWellFunction.of(10, 1e-6), 1e-6, "early");
        assertRelative(WellFunction.of(1e-10), LargeDiameterWellFunction.of(1e-10, 1e-2), 1e-6, "late");
    }

    @Test
    void refusesArgumentsThatAreNotPositive() {
        assertThrows(IllegalArgumentException.class, () -> LargeDiameterWellFunction.of(0, 1));
        assertThrows(IllegalArgumentException.class, () -> LargeDiameterWellFunction.of(1, 0));
    }
}
