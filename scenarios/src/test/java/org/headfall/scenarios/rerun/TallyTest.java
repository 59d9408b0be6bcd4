package org.headfall.scenarios.rerun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class TallyTest {

    private final Tally tally = new Tally();

    @Test
    void countsWhatOnlyRoundingChanges() {
        tally.numbers(251.3, Math.nextUp(251.3), () -> "head");
        tally.texts("1.0E-14", "1.1E-14", () -> "discrepancy");
        tally.numbers(Double.NaN, Double.NaN, () -> "head");
        FileComparison found = tally.of("heads.nc");
        assertTrue(found.same());
        assertEquals(3, found.values());
        assertEquals(2, found.rounded());
    }

    @Test
    void showsOfLongTextsWhereTheyDiffer() {
        String begin = "a".repeat(300);
        tally.texts(begin + "before" + "z".repeat(300), begin + "now", () -> "document");
        String first = tally.of("heads.nc").first().orElseThrow();
        assertTrue(first.contains("aabeforezz"), first);
        assertTrue(first.endsWith("aanow now"), first);
        assertTrue(first.length() < 300, first);
    }

    @Test
    void namesTheFirstDifferenceBeyondRounding() {
        tally.numbers(10, 10.000_001, () -> "head at A");
        tally.texts("holds", "crossed", () -> "limit 2");
        tally.numbers(Double.NaN, 3, () -> "head at B");
        FileComparison found = tally.of("heads.nc");
        assertEquals(Optional.of("head at A: 10.0 in the results, 10.000001 now"), found.first());
        assertEquals(3, found.differing());
        assertEquals(0, found.rounded());
    }
}
