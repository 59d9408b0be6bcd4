package org.headfall.solver.aquifer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Fields that no aquifer has are refused with what, where and how much. */
class AquiferTest {

    private static final RectilinearGrid GRID = new RectilinearGrid(Axis.uniform(0, 10, 4), Axis.uniform(0, 10, 3));

    /** Transmissivity along x and y, storativity, top and bottom, all as they should be. */
    private static double[][] fields() {
        double[][] fields = new double[5][12];
        double[] values = {300, 200, 2e-4, -100, -200};
        for (int f = 0; f < fields.length; f++) {
            Arrays.fill(fields[f], values[f]);
        }
        return fields;
    }

    private static Aquifer aquifer(double[][] fields) {
        boolean[] active = new boolean[12];
        Arrays.fill(active, true);
        return new Aquifer(GRID, fields[0], fields[1], fields[2], fields[3], fields[4], active);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0, 5, 'found 0 m2/d in cell 5'",
        "0, -3, 7, 'found -3 m2/d in cell 7'",
        "1, NaN, 11, 'found NaN m2/d in cell 11'",
        "1, Infinity, 0, 'found Infinity m2/d in cell 0'",
        "2, 0, 2, 'found 0'",
        "2, -0.0002, 3, 'found -0.0002'"
    })
    void aTransmissivityOrStorativityThatIsNotPositiveIsNamedWithItsCell(
            int field, double value, int cell, String named) {
        double[][] fields = fields();
        fields[field][cell] = value;
        String message = String.valueOf(assertThrows(IllegalArgumentException.class, () -> aquifer(fields))
                .getMessage());
        assertEquals(
                true,
                message.contains("must be positive") && message.contains(named) && message.endsWith("in cell " + cell),
                message);
    }

    @Test
    void aBottomAboveTheTopIsNamedWithItsCell() {
        double[][] fields = fields();
        fields[4][6] = -90;
        String message = String.valueOf(assertThrows(IllegalArgumentException.class, () -> aquifer(fields))
                .getMessage());
        assertEquals("aquifer bottom must lie below its top, found bottom -90 m and top -100 m in cell 6", message);
    }
}
