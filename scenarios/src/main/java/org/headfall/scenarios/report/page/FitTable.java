package org.headfall.scenarios.report.page;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.report.content.MeasuredHead;
import org.headfall.scenarios.report.page.PageTable.Column;

/**
 * Measured beside computed heads: a table, and in a sentence their number, mean error, root mean square error, that over
 * the measured range, and the worst (Anderson, Woessner and Hunt 2015, Applied Groundwater Modeling, chapter 9; from memory).
 */
final class FitTable {

    private FitTable() {}

    static PageTable of(List<MeasuredHead> heads) {
        return new PageTable(
                "measured",
                "Measured and computed heads",
                List.of(
                        new Column("Site", Quantity.TEXT),
                        new Column("Date", Quantity.DATE),
                        new Column("Read off", Quantity.TEXT),
                        new Column("Measured head", Quantity.LEVEL),
                        new Column("Computed head", Quantity.LEVEL),
                        new Column("Computed less measured", Quantity.HEIGHT)),
                heads.stream().map(FitTable::row).toList());
    }

    private static List<Cell> row(MeasuredHead head) {
        return List.of(
                Cell.text(head.site()),
                Cell.date(head.date(), ""),
                Cell.text(head.read()),
                Cell.number(Quantity.LEVEL, head.measured()),
                Cell.number(Quantity.LEVEL, head.computed()),
                Cell.number(Quantity.HEIGHT, error(head)));
    }

    private static double error(MeasuredHead head) {
        return head.computed() - head.measured();
    }

    /** How well computed heads meet measured ones, empty without any. */
    static Optional<Sentence> sentence(List<MeasuredHead> all) {
        List<MeasuredHead> heads =
                all.stream().filter(head -> Double.isFinite(error(head))).toList();
        if (heads.isEmpty()) {
            return Optional.empty();
        }
        double mean = heads.stream().mapToDouble(FitTable::error).average().orElse(0);
        double square = heads.stream()
                .mapToDouble(head -> error(head) * error(head))
                .average()
                .orElse(0);
        double range = heads.stream().mapToDouble(MeasuredHead::measured).max().orElse(0)
                - heads.stream().mapToDouble(MeasuredHead::measured).min().orElse(0);
        MeasuredHead worst = heads.stream()
                .max(Comparator.comparingDouble(head -> Math.abs(error(head))))
                .orElseThrow();
        Sentence sentence = Sentence.of("Against " + Words.count(heads.size(), "measured head", "measured heads")
                        + " the computed ones are ")
                .and(Quantity.HEIGHT, Math.abs(mean))
                .and(mean >= 0 ? " too high in the mean and miss them by " : " too low in the mean and miss them by ")
                .and(Quantity.HEIGHT, Math.sqrt(square))
                .and(" (root mean square");
        Sentence ranged = range > 0
                ? sentence.and(", " + Words.number(100 * Math.sqrt(square) / range, 0)
                        + "\u00a0% of the range that was measured)")
                : sentence.and(")");
        return Optional.of(ranged.and("; the worst, ")
                .and(Quantity.HEIGHT, error(worst))
                .and(", is at " + worst.site() + " on " + Words.date(worst.date())
                        + ". No text sets one mark that has to be met."));
    }
}
