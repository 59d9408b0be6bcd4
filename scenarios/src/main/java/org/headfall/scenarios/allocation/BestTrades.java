package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.planning.PlanningTable;

/**
 * The part of a table of trades that a page holds. All have {@code n (n - 1)} rows a place for n bores; a trade is bound by the place
 * that allows least, so of each pair of bores only that row is of use, and of those the ones that allow most.
 */
final class BestTrades {

    private static final int MOST_ROWS = 50;

    /** Columns of a row. */
    private static final int FROM = 1;

    private static final int TO = 2;
    private static final int MORE = 3;

    private BestTrades() {}

    /**
     * The part of a table.
     *
     * @param all place, bore that takes less, bore that takes more, how much more (ML/yr)
     * @return the same table if it has at most {@value #MOST_ROWS} rows; otherwise so many of its rows, those that allow most first
     */
    static PlanningTable of(PlanningTable all) {
        if (all.rows().size() <= MOST_ROWS) {
            return all;
        }
        Map<List<String>, List<String>> binding = new LinkedHashMap<>();
        for (List<String> row : all.rows()) {
            binding.merge(
                    List.of(row.get(FROM), row.get(TO)), row, (one, other) -> more(other) < more(one) ? other : one);
        }
        List<List<String>> best = binding.values().stream()
                .sorted(Comparator.comparingDouble(BestTrades::more).reversed())
                .limit(MOST_ROWS)
                .toList();
        List<String> notes = new ArrayList<>(all.notes());
        notes.add("Of each two bores this is the place that allows least; shown are the " + best.size() + " of "
                + binding.size() + " pairs that allow most. " + all.file() + " holds all "
                + all.rows().size()
                + " lines, every pair at every place.");
        return new PlanningTable(all.id(), all.caption(), all.file(), all.header(), best, notes);
    }

    private static double more(List<String> row) {
        return Double.parseDouble(row.get(MORE));
    }
}
