package org.headfall.scenarios.siting;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitMargins;
import org.headfall.scenarios.limits.LimitPeriod;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.junit.jupiter.api.Test;

/** What new bores may use of a limit, worked by hand. */
class LimitHeadroomTest {

    private static final double SHORTEST = 10;

    private static LimitHeadroom headroom(LimitedQuantity quantity, double[] days, double[] margins, double error) {
        Limit limit = new Limit("limit", quantity, "spring", new Comparison.Start(), LimitPeriod.EVER, "");
        return LimitHeadroom.of(limit, 0, new LimitMargins(days, margins, error), SHORTEST, 1000);
    }

    /** Common practice, no source: what numbers cannot tell from a crossing is not given away. */
    @Test
    void theNumericalErrorOfALimitIsKeptFree() {
        double[] days = {0, 100, 500, 1000};
        double[] margins = {9, 2, 2.5, 3};
        LimitHeadroom exact = headroom(new LimitedQuantity.Drawdown(10), days, margins, 0);
        LimitHeadroom doubtful = headroom(new LimitedQuantity.Drawdown(10), days, margins, 0.3);
        assertArrayEquals(new double[] {100, 500, 1000}, doubtful.days());
        for (int day = 0; day < 3; day++) {
            assertEquals(margins[day + 1] - 0.3, doubtful.margin(day), 1e-12);
            assertEquals(margins[day + 1], exact.margin(day), 1e-12);
        }
    }

    /** A bore that lowers heads by 0.001 m for each m³/d may take 2 m less 0.3 m, 1,700 m³/d, and not 2,000. */
    @Test
    void aNewBoreMayTakeWhatIsLeftBeyondTheError() {
        LimitHeadroom headroom = headroom(new LimitedQuantity.Drawdown(10), new double[] {1000}, new double[] {2}, 0.3);
        double effect = headroom.effectOfOne(0, time -> 0.001);
        RateBounds bounds = new RateBounds(1, 5000);
        bounds.lower(0, headroom.margin(0) / effect, 1);
        assertEquals(1700, bounds.rate()[0], 1e-9);
        headroom.use(0, 1700 * effect);
        assertEquals(0, headroom.margin(0), 1e-12);
    }

    /** Less is left than the error: no rate at all, however small. */
    @Test
    void nothingIsLeftWhereTheErrorIsLargerThanTheMargin() {
        LimitHeadroom headroom =
                headroom(new LimitedQuantity.Drawdown(10), new double[] {1000}, new double[] {0.2}, 0.3);
        assertTrue(headroom.margin(0) < 0, "margin " + headroom.margin(0));
        RateBounds bounds = new RateBounds(1, 5000);
        bounds.lower(0, headroom.margin(0) / headroom.effectOfOne(0, time -> 0.001), 1);
        assertEquals(0, bounds.rate()[0]);
    }

    /** A later, tighter day makes an earlier one idle, since the effect of a steady rate grows; errors change nothing in that. */
    @Test
    void earlierDaysCountOnlyIfLessIsLeftThen() {
        LimitHeadroom headroom = headroom(
                new LimitedQuantity.Drawdown(10), new double[] {100, 200, 300, 400}, new double[] {1, 4, 2, 3}, 0.5);
        assertArrayEquals(new double[] {100, 300, 400}, headroom.days());
        assertArrayEquals(
                new double[] {0.5, 1.5, 2.5},
                new double[] {headroom.margin(0), headroom.margin(1), headroom.margin(2)},
                1e-12);
    }
}
