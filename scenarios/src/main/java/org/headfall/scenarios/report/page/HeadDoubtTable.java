package org.headfall.scenarios.report.page;

import java.util.List;
import org.headfall.scenarios.report.content.HeadDoubt;
import org.headfall.scenarios.report.page.PageTable.Column;

/** The table of the error budget. */
final class HeadDoubtTable {

    private HeadDoubtTable() {}

    static PageTable of(List<HeadDoubt> doubts) {
        return new PageTable(
                "error-budget",
                "Numerical error of heads",
                List.of(
                        new Column("Site", Quantity.TEXT),
                        new Column("Date", Quantity.DATE),
                        new Column("Time steps", Quantity.SMALL_HEIGHT),
                        new Column("Grid", Quantity.SMALL_HEIGHT),
                        new Column("Solver, at most", Quantity.SMALL_HEIGHT),
                        new Column("Far boundary", Quantity.SMALL_HEIGHT),
                        new Column("Together", Quantity.SMALL_HEIGHT)),
                doubts.stream().map(HeadDoubtTable::row).toList());
    }

    private static List<Cell> row(HeadDoubt doubt) {
        return List.of(
                Cell.text(doubt.site()),
                Cell.date(doubt.date(), ""),
                Cell.number(Quantity.SMALL_HEIGHT, doubt.time()),
                Cell.number(Quantity.SMALL_HEIGHT, doubt.grid()),
                Cell.number(Quantity.SMALL_HEIGHT, doubt.solver()),
                Cell.number(Quantity.SMALL_HEIGHT, doubt.boundary()),
                Cell.number(Quantity.SMALL_HEIGHT, doubt.together()));
    }
}
