package org.headfall.scenarios.report.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class ContourLinesTest {

    private static final double[] X = {0, 1, 3, 7, 8};
    private static final double[] Y = {10, 12, 13, 17};

    private static float[] field(java.util.function.DoubleBinaryOperator value) {
        float[] values = new float[X.length * Y.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = (float) value.applyAsDouble(X[i % X.length], Y[i / X.length]);
        }
        return values;
    }

    @Test
    void aPlaneHasStraightLinesWhereItHasTheValue() {
        List<ContourLines.Piece> pieces = new ContourLines(X, Y, field((x, y) -> 2 * x - y)).at(-8);
        assertTrue(pieces.size() >= 4, "found " + pieces.size());
        for (ContourLines.Piece piece : pieces) {
            assertEquals(-8, 2 * piece.fromX() - piece.fromY(), 1e-5);
            assertEquals(-8, 2 * piece.toX() - piece.toY(), 1e-5);
        }
    }

    @Test
    void aSaddleHasTwoPiecesInItsSquare() {
        float[] saddle = {1, -1, -1, 1};
        assertEquals(
                2,
                new ContourLines(new double[] {0, 1}, new double[] {0, 1}, saddle)
                        .at(0)
                        .size());
    }

    @Test
    void nothingIsDrawnBesideAMissingValue() {
        float[] values = field((x, y) -> x);
        values[0] = Float.NaN;
        new ContourLines(X, Y, values)
                .at(0.5)
                .forEach(piece -> assertTrue(piece.fromY() >= 12 && piece.toY() >= 12, piece::toString));
    }
}
