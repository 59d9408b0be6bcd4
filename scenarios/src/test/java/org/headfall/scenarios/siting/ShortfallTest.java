package org.headfall.scenarios.siting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** By hand: of five cells one is no aquifer, two are excluded, one has a limit that leaves too little, one allows the rate. */
class ShortfallTest {

    private static String words(Trials trials) {
        Ruling ruling = new Ruling();
        int limit = ruling.add("a limit");
        RateBounds bounds = new RateBounds(5, 100);
        bounds.lower(1, 0, Ruling.EXCLUDED);
        bounds.lower(2, 20, limit);
        bounds.lower(3, 0, Ruling.EXCLUDED);
        return new Shortfall(new boolean[] {false, true, true, true, true}, 50, ruling.names(), List.of("a limit"))
                .words(bounds, trials);
    }

    @Test
    void namesWhatDecidesInMostCellsFirst() {
        String words = words(Trials.NONE);
        assertTrue(words.startsWith("no further cell allows the rate. Of 4 cells"), words);
        assertTrue(words.contains("excluded area in 2, a limit in 1"), words);
        assertFalse(words.contains("largest rate"), words);
        assertTrue(words.endsWith("error: a limit"), words);
    }

    /** The one cell that is left by the map was tried. */
    @Test
    void saysThatAllOthersFailedOnceSolvedFor() {
        String words = words(Trials.NONE.failed(new boolean[5]));
        assertTrue(words.contains("allows the rate: 1 did by the map and do not when they are solved for"), words);
    }

    /** Of twenty cells the best twelve fail: it must not be said that no other allows the rate. */
    @Test
    void saysHowManyWereNotTried() {
        boolean[] open = new boolean[20];
        Arrays.fill(open, true);
        Trials trials = Trials.NONE;
        int tried = 0;
        while (trials.goOn()) {
            open[tried++] = false;
            trials = trials.failed(open);
        }
        assertEquals(12, trials.failed());
        assertEquals(8, trials.untried());
        String words = words(trials);
        assertTrue(words.startsWith("the search ended after 12 cells, "), words);
        assertTrue(words.contains("8 more allow it by the map and were not tried"), words);
        assertFalse(words.contains("no further cell"), words);
    }
}
