package org.headfall.scenarios.siting;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** By hand: of five cells one is no aquifer, two are excluded, one has a limit that leaves too little, one allows the rate. */
class ShortfallTest {

    @Test
    void namesWhatDecidesInMostCellsFirst() {
        Ruling ruling = new Ruling();
        int limit = ruling.add("a limit");
        RateBounds bounds = new RateBounds(5, 100);
        bounds.lower(1, 0, Ruling.EXCLUDED);
        bounds.lower(2, 20, limit);
        bounds.lower(3, 0, Ruling.EXCLUDED);
        String words = Shortfall.words(
                bounds, new boolean[] {false, true, true, true, true}, 50, ruling.names(), List.of("a limit"));
        assertTrue(words.contains("of the 4 cells"), words);
        assertTrue(words.contains("excluded area in 2, a limit in 1"), words);
        assertFalse(words.contains("largest rate"), words);
        assertTrue(words.endsWith("error: a limit"), words);
    }
}
