package org.headfall.scenarios.siting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Places that bend alike and act on each other, by hand. */
class MutualBendsTest {

    /**
     * A place that loses 3 m³/d by each metre of fall until it stops after 1 m, three times what the straight rule says, and is
     * raised by 0.5 m by each m³/d: a straight fall u is a true one of s = u / 2, and the excess 3 s - s is u, up to u = 2.
     */
    private static final Bend BEND = Bend.of(fall -> Math.min(3 * fall, 3), 1, 0.5);

    /** Two of them, each raised by m by a unit excess of the other: e = 1.5 - m e. */
    private static MutualBends two(double m) {
        return new MutualBends(List.of(BEND, BEND), new double[][] {{0, m}, {m, 0}});
    }

    @Test
    void excessesSettleWhereEachAllowsForTheOther() {
        for (double m : new double[] {0, 0.3, 0.9, 0.99}) {
            MutualBends two = two(m);
            for (double excess : two.excesses(new double[] {1.5, 1.5})) {
                assertEquals(1.5 / (1 + m), excess, 1e-5, "raised by " + m);
            }
            assertEquals(0, two.unsettled(), "raised by " + m);
        }
    }

    /** A round leaves m² = 0.9998 of what was missing, so a thousand leave four fifths: that must not pass in silence. */
    @Test
    void whatHasNotSettledIsReported() {
        MutualBends two = two(0.9999);
        double[] excess = two.excesses(new double[] {1.5, 1.5});
        assertTrue(Math.abs(excess[0] - 1.5 / 1.9999) > 0.1, "settled at " + excess[0]);
        assertTrue(two.unsettled() > 1e-5 && two.unsettled() < 1e-3, "unsettled " + two.unsettled());
        two.excesses(new double[2]);
        assertTrue(two.unsettled() > 1e-5, "forgotten");
    }
}
