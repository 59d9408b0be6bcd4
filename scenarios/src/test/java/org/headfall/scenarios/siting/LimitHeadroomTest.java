package org.headfall.scenarios.siting;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.OptionalDouble;
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
        double[] perMetre = new double[days.length];
        Arrays.fill(perMetre, 1);
        return LimitHeadroom.of(limit, new LimitMargins(days, margins, perMetre, error), SHORTEST, 1000);
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

    /**
     * A share of available head whose reference is 50 m above the level on day 100 and 80 m on day 200 changes by 2 and by
     * 1.25 per cent a metre. Of 10 and 9 per cent 5 and 7.2 m are left, so the first day decides where drawdown is the same.
     * Of 9 and 10 per cent at 1 and 2 per cent a metre 9 and 5 m are left: the first day, though its share is the smaller, does not count.
     */
    @Test
    void sharesCountByTheMetresThatAreLeft() {
        Limit limit = new Limit(
                "share",
                new LimitedQuantity.ShareOfAvailableHead(
                        60,
                        new LimitedQuantity.ShareOfAvailableHead.Base(
                                LimitedQuantity.ShareOfAvailableHead.BaseKind.AQUIFER_TOP, OptionalDouble.empty())),
                "spring",
                new Comparison.WithoutProposedBores(),
                LimitPeriod.EVER,
                "");
        LimitMargins margins =
                new LimitMargins(new double[] {100, 200}, new double[] {10, 9}, new double[] {2, 1.25}, 0);
        LimitHeadroom headroom = LimitHeadroom.of(limit, margins, SHORTEST, 1000);
        assertArrayEquals(new double[] {100, 200}, headroom.days());
        assertEquals(2 * 0.001, headroom.effectOfOne(0, time -> 0.001), 1e-15);
        assertEquals(1.25 * 0.001, headroom.effectOfOne(1, time -> 0.001), 1e-15);
        assertEquals(5000, headroom.margin(0) / headroom.effectOfOne(0, time -> 0.001), 1e-9);
        LimitMargins rising = new LimitMargins(new double[] {100, 200}, new double[] {9, 10}, new double[] {1, 2}, 0);
        assertArrayEquals(
                new double[] {200},
                LimitHeadroom.of(limit, rising, SHORTEST, 1000).days());
    }
}
