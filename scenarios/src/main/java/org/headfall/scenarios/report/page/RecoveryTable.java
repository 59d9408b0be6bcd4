package org.headfall.scenarios.report.page;

import java.util.List;
import org.headfall.scenarios.report.content.Recovery;
import org.headfall.scenarios.report.page.PageTable.Column;

/** What becomes of drawdown when taking stops. */
final class RecoveryTable {

    private static final int DECIMALS = 2;

    private RecoveryTable() {}

    static PageTable of(List<Recovery> recoveries) {
        List<Column> columns = List.of(
                new Column("Site", Quantity.TEXT),
                new Column("Taking that stops", Quantity.TEXT),
                new Column("It stops on", Quantity.DATE),
                new Column("Drawdown then", Quantity.HEIGHT),
                new Column("Largest from then on", Quantity.HEIGHT),
                new Column("On", Quantity.DATE),
                new Column("Nine tenths recovered on", Quantity.DATE),
                new Column("Years after the stop", Quantity.TEXT));
        return new PageTable(
                "recovery",
                "If taking stops: drawdown by it from then on",
                columns,
                recoveries.stream().map(RecoveryTable::row).toList());
    }

    private static List<Cell> row(Recovery recovery) {
        String years = Words.number(recovery.yearsToRecovery(), DECIMALS);
        return List.of(
                Cell.text(recovery.site()),
                Cell.text(recovery.taking()),
                Cell.date(recovery.stop(), ""),
                Cell.number(Quantity.HEIGHT, recovery.atStop()),
                Cell.number(Quantity.HEIGHT, recovery.largest()),
                recovery.grows()
                        ? Cell.text("still growing on " + Words.date(recovery.last()))
                        : Cell.date(recovery.largestOn(), "\u2013"),
                Cell.date(recovery.recoveredOn(), "\u2013"),
                Cell.figure(Sentence.of(years), recovery.yearsToRecovery()));
    }
}
