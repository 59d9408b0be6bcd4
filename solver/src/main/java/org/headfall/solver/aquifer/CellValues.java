package org.headfall.solver.aquifer;

import org.headfall.solver.wording.PlainNumber;

/** Checks of fields on the grid that name the first cell at fault. */
final class CellValues {

    private CellValues() {}

    static void requirePositive(String quantity, String unit, double[] values) {
        for (int cell = 0; cell < values.length; cell++) {
            if (!(values[cell] > 0 && Double.isFinite(values[cell]))) {
                throw new IllegalArgumentException(quantity + " must be positive, found " + PlainNumber.of(values[cell])
                        + " " + unit + " in cell " + cell);
            }
        }
    }

    static void requireNotNegative(String quantity, String unit, double[] values) {
        for (int cell = 0; cell < values.length; cell++) {
            if (!(values[cell] >= 0 && Double.isFinite(values[cell]))) {
                throw new IllegalArgumentException(quantity + " must not be negative, found "
                        + PlainNumber.of(values[cell]) + " " + unit + " in cell " + cell);
            }
        }
    }
}
