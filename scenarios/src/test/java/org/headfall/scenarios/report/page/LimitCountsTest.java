package org.headfall.scenarios.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.headfall.scenarios.limits.Outcome.Kind;
import org.headfall.scenarios.report.content.LimitOutcome;
import org.junit.jupiter.api.Test;

/** Counts of limits and places by hand. */
class LimitCountsTest {

    private static LimitOutcome limit(String name, Kind verdict) {
        return new LimitOutcome(
                name,
                "",
                "place",
                "drawdown",
                "",
                5,
                4,
                null,
                "m",
                0.01,
                1,
                0.2,
                verdict,
                null,
                "",
                Double.NaN,
                Double.NaN);
    }

    /** Three limits, the first at three places: crossed at one, kept at one, unsure at one. */
    @Test
    void aLimitAtSeveralPlacesIsOneLimit() {
        LimitCounts counts = LimitCounts.of(List.of(
                limit("springs", Kind.CROSSED),
                limit("springs", Kind.HOLDS),
                limit("springs", Kind.UNDECIDED),
                limit("neighbours", Kind.HOLDS),
                limit("stock", Kind.HOLDS)));
        assertEquals("One of 3 limits is crossed at 1 of 5 places: ", counts.crossed());
        assertEquals(" Limits are kept at 3 places; at 1 nothing sure can be said.", counts.besidesCrossed());
        assertEquals("2 of 3", counts.keptOfAll());
        assertEquals("; 1 crossed at one place; at one place nothing sure can be said", counts.detail());
    }

    @Test
    void keptLimitsAreCountedAtAllTheirPlaces() {
        LimitCounts held = LimitCounts.of(
                List.of(limit("springs", Kind.HOLDS), limit("springs", Kind.HOLDS), limit("stock", Kind.HOLDS)));
        assertTrue(held.allHold());
        assertEquals("All 2 limits are kept at all 3 places.", held.kept("1 July 2046"));
        assertEquals("", held.detail());
        LimitCounts unsure = LimitCounts.of(
                List.of(limit("springs", Kind.HOLDS), limit("springs", Kind.UNDECIDED), limit("stock", Kind.HOLDS)));
        assertEquals(
                "1 of 2 limits are kept until 1 July 2046; at 1 of 3 places nothing sure can be said.",
                unsure.kept("1 July 2046"));
    }

    @Test
    void placesAreNotToldWhereEachLimitHasOne() {
        LimitCounts counts = LimitCounts.of(List.of(limit("springs", Kind.CROSSED), limit("stock", Kind.CROSSED)));
        assertEquals("2 of 2 limits are crossed, first ", counts.crossed());
        assertEquals("", counts.besidesCrossed());
        assertEquals(
                "The limit that was set is kept.",
                LimitCounts.of(List.of(limit("stock", Kind.HOLDS))).kept("1 July 2046"));
    }
}
