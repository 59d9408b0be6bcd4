package org.headfall.scenarios.report.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.headfall.scenarios.findings.AttributedChange;
import org.headfall.scenarios.findings.AttributedChange.Cause;
import org.headfall.scenarios.findings.AttributionSummary;
import org.headfall.scenarios.findings.ShareBase;
import org.headfall.scenarios.quantity.DischargeUnit;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What each bore did at each place until each report date, for the map of the page. A table a date, a row a place: the whole,
 * the part of each bore, drift; what is left of the whole is not linear. Places where a quantity is not known have no numbers.
 */
final class AttributionData {

    /** What drawdown is rounded to (m), as in the file it is from. */
    private static final double DRAWDOWN_QUANTUM = 1e-6;

    /** What lost discharge is rounded to (m³/d), as in the file it is from: a millionth of 1 L/s. */
    private static final double LOSS_QUANTUM = DischargeUnit.LITRES_PER_SECOND.toCubicMetresPerDay(1e-6);

    /** Reasons to tell no shares, in the order in which tables number them. */
    private static final List<ShareBase.Sense> SENSES = List.of(ShareBase.Sense.values());

    private final List<AttributionSummary> summaries;
    private final List<String> places;

    /** The column of each bore. */
    private final Map<String, Integer> bores = new LinkedHashMap<>();

    private AttributionData(List<AttributionSummary> summaries) {
        this.summaries = summaries;
        List<AttributedChange> changes = lastDateFirst(summaries);
        places = changes.stream().map(AttributedChange::place).distinct().toList();
        changes.stream()
                .flatMap(change -> change.bores().stream())
                .forEach(cause -> bores.putIfAbsent(cause.name(), bores.size()));
    }

    /** What is known at all places of all dates: a place or a bore may be missing from some, as where a table has gaps. */
    private static List<AttributedChange> lastDateFirst(List<AttributionSummary> summaries) {
        List<AttributedChange> changes = new ArrayList<>();
        for (int date = summaries.size() - 1; date >= 0; date--) {
            changes.addAll(summaries.get(date).drawdown());
            changes.addAll(summaries.get(date).loss());
        }
        return changes;
    }

    /**
     * Puts the summaries of all dates, of which there is at least one.
     *
     * @param node filled: names of dates, places (the most affected on the last date first) and bores, and the tables
     * @param summaries in order of time
     */
    static void put(ObjectNode node, List<AttributionSummary> summaries) {
        AttributionData data = new AttributionData(summaries);
        ArrayNode dates = node.putArray("dates");
        summaries.forEach(summary -> dates.add(summary.date().toString()));
        data.places.forEach(node.putArray("places")::add);
        data.bores.keySet().forEach(node.putArray("bores")::add);
        ArrayNode reasons = node.putArray("whyNoShares");
        SENSES.forEach(sense -> reasons.add(sense.whyNot()));
        data.put(node.putObject("drawdown"), AttributionSummary::drawdown, DRAWDOWN_QUANTUM, ShareBase.LEAST_DRAWDOWN);
        data.put(node.putObject("loss"), AttributionSummary::loss, LOSS_QUANTUM, ShareBase.LEAST_LOSS);
    }

    private void put(
            ObjectNode node,
            Function<AttributionSummary, List<AttributedChange>> changes,
            double quantum,
            double least) {
        int row = bores.size() + 2;
        PackedNumbers packed = new PackedNumbers(quantum, row);
        ArrayNode senses = node.putArray("senses");
        for (AttributionSummary summary : summaries) {
            Map<String, AttributedChange> byPlace = new HashMap<>();
            changes.apply(summary).forEach(change -> byPlace.put(change.place(), change));
            double[] table = new double[places.size() * row];
            Arrays.fill(table, Double.NaN);
            ArrayNode ofDate = senses.addArray();
            for (int place = 0; place < places.size(); place++) {
                AttributedChange change = byPlace.get(places.get(place));
                if (change == null) {
                    ofDate.add(0);
                } else {
                    ofDate.add(SENSES.indexOf(change.shares(least).sense()));
                    fill(table, place * row, change);
                }
            }
            packed.add(table);
        }
        node.put("quantum", quantum);
        node.put("tables", packed.text());
    }

    private void fill(double[] table, int from, AttributedChange change) {
        table[from] = change.whole();
        Arrays.fill(table, from + 1, from + 1 + bores.size(), 0);
        for (Cause cause : change.bores()) {
            table[from + 1 + Objects.requireNonNull(bores.get(cause.name()), cause.name())] += cause.amount();
        }
        table[from + 1 + bores.size()] = change.drift();
    }
}
