package org.headfall.solver.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.FloatBuffer;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The reference is the exact sum in decimals. */
class RowSumTest {

    private static final int COLUMNS = 40;
    private static final long SEED = 3;

    private static WindowedField field(int row, int first, int end, float[] values) {
        return new WindowedField(new CellWindow(COLUMNS, 4, row, row + 1, first, end), FloatBuffer.wrap(values));
    }

    /** Six fields that begin at different columns, whose weights cancel ten million times over. */
    @Test
    void sumsOfLargeWeightsThatCancelAreExact() {
        Random random = new Random(SEED);
        int count = 6;
        WindowedField[] fields = new WindowedField[count];
        float[][] values = new float[count][];
        double[] weights = new double[count];
        for (int i = 0; i < count; i++) {
            values[i] = new float[COLUMNS - i];
            for (int k = 0; k < values[i].length; k++) {
                values[i][k] = 1 + 1e-6f * random.nextFloat();
            }
            fields[i] = field(2, i, COLUMNS, values[i]);
            weights[i] = (i % 2 == 0 ? 1 : -1) * (1e7 + random.nextDouble());
        }
        RowSum sum = new RowSum(COLUMNS, count);
        assertFalse(sum.take(fields, 1), "no field reaches the row before");
        assertTrue(sum.take(fields, 2));
        assertEquals(0, sum.first());
        assertEquals(COLUMNS, sum.end());
        double[] found = sum.weighted(weights);
        for (int column = 0; column < COLUMNS; column++) {
            BigDecimal exact = BigDecimal.ZERO;
            for (int i = 0; i <= Math.min(column, count - 1); i++) {
                exact = exact.add(new BigDecimal(weights[i]).multiply(new BigDecimal(values[i][column - i])));
            }
            assertEquals(exact.doubleValue(), found[column], 1e-8, "column " + column);
        }
    }
}
