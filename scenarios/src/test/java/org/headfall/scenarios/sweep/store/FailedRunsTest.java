package org.headfall.scenarios.sweep.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class FailedRunsTest {

    @Test
    void reasonsThatDifferInValuesAloneAreOne() {
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

    /** Beside values that differ: decimals, units, dates, lines of a document and counts. */
    @Test
    void numbersOfNamesKeepReasonsApart() {
        FailedRuns failed = new FailedRuns();
        failed.add(1, "'Town 1' cannot be met: at 500.0 m3/d it needs 3 m more on 2031-07-01");
        failed.add(2, "'Town 2' cannot be met: at 500.0 m3/d it needs 3 m more on 2031-07-01");
        failed.add(3, "'Town 1' cannot be met: at 600.5 m3/d it needs 12 m more on 2032-01-01");
        failed.add(
                4, "not a valid scenario: s.yaml:12:5: bores.Town 1.rate is out of range: found 7; allowed: above 0");
        failed.add(
                5, "not a valid scenario: s.yaml:13:9: bores.Town 1.rate is out of range: found 8; allowed: above 0");
        failed.add(
                6, "not a valid scenario: s.yaml:13:9: bores.Town 2.rate is out of range: found 8; allowed: above 0");
        failed.add(7, "not a valid scenario: s.yaml:13:9: bores[3].rate is out of range: found 8; allowed: above 0");
        failed.add(8, "not a valid scenario: s.yaml:13:9: bores[4].rate is out of range: found 8; allowed: above 0");
        assertEquals(
                List.of(List.of(1, 3), List.of(2), List.of(4, 5), List.of(6), List.of(7), List.of(8)),
                List.copyOf(failed.byReason().values()));
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
