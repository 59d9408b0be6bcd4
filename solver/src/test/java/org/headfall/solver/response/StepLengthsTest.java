package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class StepLengthsTest {

    private static final double TOLERANCE = 1e-3;

    /** Chord of t² over a length L: its mean distance from the parabola is L²/6 (calculus). */
    @Test
    void tellsTheMeanDistanceOfAParabolaFromItsChord() {
        StepLengths lengths = new StepLengths(TOLERANCE);
        double former = 0.7;
        double length = 2.5;
        assertTrue(lengths.accept(0, former));

        double off = length * length + former * length;

        assertEquals(length * length / 6, lengths.distance(off, length), 1e-12);
    }

    @Test
    void startsAfterABendAsShortAsTheBendBeforeHasAskedFor() {
        StepLengths lengths = new StepLengths(TOLERANCE);
        grow(lengths);
        lengths.bend();
        assertFalse(lengths.accept(100 * TOLERANCE, 10));
        double tried = lengths.next(1000);
        assertTrue(lengths.accept(TOLERANCE, tried));
        double asked = lengths.next(1000);
        assertTrue(asked < tried);

        grow(lengths);
        assertTrue(lengths.next(1000) > asked);
        lengths.bend();

        assertEquals(asked, lengths.next(1000));
    }

    @Test
    void copyGoesOnByItself() {
        StepLengths lengths = new StepLengths(TOLERANCE);
        grow(lengths);
        StepLengths copy = lengths.copy();
        double before = lengths.next(1000);
        copy.startAnew();

        assertTrue(copy.next(1000) < before);
        assertEquals(before, lengths.next(1000));
    }

    private static void grow(StepLengths lengths) {
        for (int step = 0; step < 6; step++) {
            lengths.accept(0, Math.min(10, lengths.next(1000)));
        }
    }
}
