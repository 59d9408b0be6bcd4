package org.headfall.scenarios.limits;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Times of limits in words. */
class LimitPeriodTest {

    private static String within(double days) {
        return new LimitPeriod(0, OptionalDouble.of(days)).words();
    }

    @Test
    void timesBelowAYearAreSaidInDays() {
        assertEquals("within 1 day", within(1));
        assertEquals("within 6 days", within(6));
        assertEquals("within 1 year", within(365));
        assertEquals("within 1.5 years", within(548));
        assertEquals("within 5 years", within(1826));
        assertEquals("after 30 days", new LimitPeriod(30, OptionalDouble.empty()).words());
    }
}
