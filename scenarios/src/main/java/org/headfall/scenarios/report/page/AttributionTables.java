package org.headfall.scenarios.report.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.findings.AttributedChange;
import org.headfall.scenarios.findings.AttributedChange.Cause;
import org.headfall.scenarios.findings.AttributionSummary;
import org.headfall.scenarios.findings.ShareBase;
import org.headfall.scenarios.report.page.PageTable.Column;

/** Whom drawdown and lost discharge are put down to. */
public final class AttributionTables {

    /** Places in a table, the most affected first. */
    private static final int MOST_PLACES = 20;

    /** Causes of a split that are named one by one. */
    private static final int MOST_CAUSES = 3;

    private AttributionTables() {}

    /**
     * A table and what it leaves out.
     *
     * @param table the most affected places
     * @param others a sentence that names the other places, blank if there are none
     */
    public record Part(PageTable table, String others) {}

    /** Drawdown, and discharge lost where anything flows, on the last date; nothing without a date. */
    static List<Part> of(List<AttributionSummary> summaries) {
        if (summaries.isEmpty()) {
            return List.of();
        }
        AttributionSummary summary = summaries.get(summaries.size() - 1);
        List<Part> parts = new ArrayList<>();
        String on = ", on " + Words.date(summary.date());
        parts.add(part(
                "attribution-drawdown",
                "Drawdown since the start and who caused it" + on,
                new Split("Drawdown", Quantity.HEIGHT, ShareBase.LEAST_DRAWDOWN),
                summary.drawdown()));
        if (!summary.loss().isEmpty()) {
            parts.add(part(
                    "attribution-loss",
                    "Discharge lost since the start by springs and flowing bores and who caused it" + on,
                    new Split("Lost discharge", Quantity.FLOW, ShareBase.LEAST_LOSS),
                    summary.loss()));
        }
        return List.copyOf(parts);
    }

    private static Part part(String id, String caption, Split split, List<AttributedChange> changes) {
        List<AttributedChange> shown = changes.subList(0, Math.min(MOST_PLACES, changes.size()));
        List<String> others = changes.subList(shown.size(), changes.size()).stream()
                .map(AttributedChange::place)
                .toList();
        boolean holders = changes.stream()
                .flatMap(change -> change.holders().stream())
                .anyMatch(holder -> !holder.name().equals(AttributionSummary.HOLDER_NOT_STATED));
        PageTable table = new PageTable(
                id,
                caption,
                split.columns(holders),
                shown.stream().map(change -> split.row(change, holders)).toList());
        return new Part(
                table, others.isEmpty() ? "" : "Less affected, in attribution.csv alone: " + Words.list(others) + ".");
    }

    /**
     * How one quantity is split.
     *
     * @param title its name as the heading of a column
     * @param quantity what it is
     * @param least smallest whole that shares are told of, in the unit in which it is kept
     */
    private record Split(String title, Quantity quantity, double least) {

        List<Column> columns(boolean holders) {
            List<Column> columns = new ArrayList<>(List.of(
                    new Column("Place", Quantity.TEXT),
                    new Column(title, quantity),
                    new Column("Largest by bore", Quantity.LONG_TEXT)));
            if (holders) {
                columns.add(new Column("Largest by holder", Quantity.LONG_TEXT));
            }
            columns.add(new Column("By group", Quantity.TEXT));
            columns.add(new Column("Drift", quantity));
            columns.add(new Column("Not linear", quantity));
            columns.add(new Column("Season", quantity));
            return columns;
        }

        List<Cell> row(AttributedChange change, boolean holders) {
            ShareBase shares = change.shares(least);
            List<Cell> cells = new ArrayList<>(List.of(
                    Cell.text(change.place()), Cell.number(quantity, change.whole()), causes(change.bores(), shares)));
            if (holders) {
                cells.add(causes(change.holders(), shares));
            }
            cells.add(causes(change.groups(), shares));
            cells.add(Cell.number(quantity, change.drift()));
            cells.add(Cell.number(quantity, change.notLinear()));
            cells.add(Cell.number(quantity, change.seasonal()));
            return cells;
        }

        /** "Town 1: 2.00 m (50.0 %), Town 2: 1.00 m (25.0 %), 4 others: 0.20 m (5.0 %)"; a dash if all round to nothing. */
        private Cell causes(List<Cause> all, ShareBase shares) {
            List<Cause> told = all.stream()
                    .filter(cause -> !roundsToNothing(cause.amount()))
                    .sorted(Comparator.comparingDouble((Cause cause) -> Math.abs(cause.amount()))
                            .reversed())
                    .toList();
            if (told.isEmpty()) {
                return Cell.text("\u2013");
            }
            // One other is named like the rest: its name is no longer than "one other".
            int named = told.size() <= MOST_CAUSES + 1 ? told.size() : MOST_CAUSES;
            List<Cause> parts = new ArrayList<>(told.subList(0, named));
            if (named < told.size()) {
                double rest = told.subList(named, told.size()).stream()
                        .mapToDouble(Cause::amount)
                        .sum();
                parts.add(new Cause(told.size() - named + " others", rest));
            }
            Sentence sentence = Sentence.of("");
            for (int i = 0; i < parts.size(); i++) {
                Cause part = parts.get(i);
                sentence =
                        sentence.and((i == 0 ? "" : ", ") + part.name() + ": ").and(quantity, part.amount());
                OptionalDouble share = shares.percent(part.amount());
                if (share.isPresent()) {
                    sentence = sentence.and(" (")
                            .and(Quantity.SHARE, share.getAsDouble())
                            .and(")");
                }
            }
            if (shares.sense() != ShareBase.Sense.SOUND) {
                sentence = sentence.and(" (no shares: " + shares.sense().whyNot() + ")");
            }
            return Cell.figure(sentence, told.get(0).amount());
        }

        private boolean roundsToNothing(double amount) {
            return quantity.show(amount).equals(quantity.show(0));
        }
    }
}
