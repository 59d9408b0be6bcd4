package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.headfall.scenarios.planning.PlanningTable;
import org.junit.jupiter.api.Test;

/** Trades of made-up figures, picked by a plain search beside. */
class BestTradesTest {

    private static PlanningTable trades(int places, int bores) {
        List<List<String>> rows = new ArrayList<>();
        for (int place = 0; place < places; place++) {
            for (int from = 0; from < bores; from++) {
                for (int to = 0; to < bores; to++) {
                    if (from != to) {
                        int more = (place * 7919 + from * 104_729 + to * 1_299_709) % 1999;
                        rows.add(
                                List.of("place " + place, "bore " + from, "bore " + to, String.valueOf(more / 1000.0)));
                    }
                }
            }
        }
        return new PlanningTable(
                "trading",
                "Trades",
                "trading.csv",
                List.of("place", "less at", "at", "more"),
                rows,
                List.of("A note."));
    }

    private static double more(List<String> row) {
        return Double.parseDouble(row.get(3));
    }

    @Test
    void aTableOfFewRowsStaysAsItIs() {
        PlanningTable few = trades(5, 3);
        assertSame(few, BestTrades.of(few));
    }

    /** 20 bores and 30 places: 11,400 rows of 380 pairs. */
    @Test
    void ofEachPairTheBindingPlaceAndOfPairsTheBest() {
        PlanningTable all = trades(30, 20);
        assertEquals(11_400, all.rows().size());
        PlanningTable best = BestTrades.of(all);
        assertEquals(50, best.rows().size());
        double before = Double.POSITIVE_INFINITY;
        Set<List<String>> shown = new HashSet<>();
        for (List<String> row : best.rows()) {
            assertTrue(all.rows().contains(row), row::toString);
            assertEquals(least(all, row), more(row), row.toString());
            assertTrue(more(row) <= before, row::toString);
            before = more(row);
            shown.add(row.subList(1, 3));
        }
        assertEquals(50, shown.size(), "each pair once");
        for (List<String> row : all.rows()) {
            assertTrue(shown.contains(row.subList(1, 3)) || least(all, row) <= before, row::toString);
        }
        assertEquals("A note.", best.notes().get(0));
        assertTrue(
                best.notes().get(1).contains("50 of 380 pairs")
                        && best.notes().get(1).contains("trading.csv holds all 11400 lines"),
                best.notes()::toString);
    }

    private static double least(PlanningTable all, List<String> pair) {
        return all.rows().stream()
                .filter(row -> row.subList(1, 3).equals(pair.subList(1, 3)))
                .mapToDouble(BestTradesTest::more)
                .min()
                .orElseThrow();
    }
}
