package org.headfall.scenarios.sweep.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class FailedRunsTest {

    @Test
    void reasonsThatDifferInNumbersAloneAreOne() {
        FailedRuns failed = new FailedRuns();
        failed.add(3, "transmissivity is out of range: found -1.5 m2/d; allowed: above 0");
        failed.add(5, "transmissivity is out of range: found -2.5e-3 m2/d; allowed: above 0");
        failed.add(7, "transmissivity is out of range: found -2.5e-3 m/d; allowed: above 0");
        failed.add(9, "transmissivity is out of range: found 1,250 m2/d; allowed: above 0");
        assertEquals(
                List.of(List.of(3, 5, 9), List.of(7)),
                List.copyOf(failed.byReason().values()));
        assertEquals(4, failed.count());
        List<String> lines = failed.lines(": ");
        assertTrue(lines.get(0).contains("found -1.5 m2/d"), lines::toString);
        assertTrue(lines.get(0).contains("other numbers in others"), lines::toString);
        assertTrue(lines.get(1).endsWith("allowed: above 0"), lines::toString);
    }

    @Test
    void listsTenReasonsAndCountsTheOthers() {
        FailedRuns failed = new FailedRuns();
        for (int number = 1; number <= 12; number++) {
            failed.add(number, "reason " + (char) ('a' + number));
        }
        assertEquals(11, failed.lines(": ").size());
        assertEquals("and 2 more reasons", failed.lines(": ").get(10));
    }
}
