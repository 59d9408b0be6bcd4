package org.headfall.scenarios.report.page;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.findings.HeadPressure;
import org.headfall.scenarios.report.content.ArtesianHead;
import org.headfall.scenarios.report.content.Interference;
import org.headfall.scenarios.report.content.LimitOutcome;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.Site;
import org.headfall.scenarios.report.page.PageTable.Column;

/** The tables of results. */
final class ResultTables {

    private ResultTables() {}

    static PageTable limits(ReportContent content) {
        List<Column> columns = List.of(
                new Column("Limit", Quantity.TEXT),
                new Column("Outcome", Quantity.TEXT),
                new Column("At", Quantity.TEXT),
                new Column("What counts", Quantity.TEXT),
                new Column("Allowed", Quantity.TEXT),
                new Column("Reached", Quantity.TEXT),
                new Column("Worst on", Quantity.DATE),
                new Column("Crossed from", Quantity.DATE),
                new Column("Clause", Quantity.TEXT));
        return new PageTable(
                "limits",
                "Limits and what became of them",
                columns,
                content.limits().stream().map(ResultTables::limit).toList());
    }

    private static List<Cell> limit(LimitOutcome limit) {
        String words = limit.verdict().words() + (limit.remark().isBlank() ? "" : ": " + limit.remark());
        Cell outcome = Cell.text(words)
                .marked(
                        switch (limit.verdict()) {
                            case HOLDS -> Cell.Tone.GOOD;
                            case CROSSED -> Cell.Tone.BAD;
                            case UNDECIDED, NOT_EVALUATED -> Cell.Tone.CLOSE;
                        });
        return List.of(
                Cell.text(limit.name()),
                outcome,
                Cell.text(limit.site()),
                Cell.text(limit.quantity() + ", " + limit.conditions()),
                Cell.text(Words.number(limit.allowed(), 2) + "\u00a0" + limit.unit()),
                Cell.text(Words.withError(limit.reached(), limit.error(), limit.unit())),
                Cell.date(limit.reachedOn(), "\u2013"),
                Cell.date(limit.crossedOn(), "\u2013"),
                Cell.text(limit.clause()));
    }

    static PageTable artesianHead(ReportContent content) {
        List<Column> columns = List.of(
                new Column("Site", Quantity.TEXT),
                new Column("Date", Quantity.DATE),
                new Column("Head above ground before", Quantity.LENGTH),
                new Column("Pressure before, water of 20\u00a0\u00b0C", Quantity.PRESSURE),
                new Column("Pressure before, hot water", Quantity.PRESSURE),
                new Column("Head above ground then", Quantity.LENGTH),
                new Column("Pressure then, hot water", Quantity.PRESSURE),
                new Column("Loss", Quantity.LENGTH),
                new Column("Decline over five years", Quantity.LENGTH_RATE),
                new Column("Working water level below ground", Quantity.LENGTH),
                new Column("Water above pump intake", Quantity.LENGTH),
                new Column("Flow before", Quantity.FLOW),
                new Column("Flow then", Quantity.FLOW),
                new Column("Stops flowing", Quantity.DATE));
        List<List<Cell>> rows = new ArrayList<>();
        for (ArtesianHead head : content.artesianHeads()) {
            head.losses().forEach(loss -> rows.add(loss(head, loss)));
        }
        return new PageTable("artesian-head", "Loss of artesian head", columns, rows);
    }

    private static List<Cell> loss(ArtesianHead head, ArtesianHead.Loss loss) {
        Cell above = Cell.number(Quantity.LENGTH, loss.aboveIntake());
        Cell stops = Cell.date(head.stopsFlowing(), Double.isFinite(head.flowBefore()) ? "keeps flowing" : "\u2013");
        return List.of(
                Cell.text(head.site()),
                Cell.date(loss.date(), ""),
                Cell.number(Quantity.LENGTH, head.before()),
                Cell.number(
                        Quantity.PRESSURE, HeadPressure.atGround(head.before()).orElse(0)),
                Cell.number(Quantity.PRESSURE, head.hotPressureBefore()),
                Cell.number(Quantity.LENGTH, loss.headAboveGround()),
                Cell.number(Quantity.PRESSURE, loss.hotPressure()),
                Cell.number(Quantity.LENGTH, loss.loss()),
                Cell.number(Quantity.LENGTH_RATE, loss.declineRate()),
                Cell.number(Quantity.LENGTH, loss.waterLevel()),
                loss.aboveIntake() <= 0 ? above.marked(Cell.Tone.BAD) : above,
                Cell.number(Quantity.FLOW, head.flowBefore()),
                Cell.number(Quantity.FLOW, loss.flow()),
                head.stopsFlowing() == null ? stops : stops.marked(Cell.Tone.BAD));
    }

    static PageTable interference(Interference matrix, int number) {
        List<Column> columns = new ArrayList<>();
        columns.add(new Column("Drawdown at", Quantity.TEXT));
        matrix.causes().forEach(cause -> columns.add(new Column("due to " + cause, Quantity.LENGTH)));
        columns.add(new Column("By others", Quantity.SHARE));
        columns.add(new Column("Sum of parts", Quantity.LENGTH));
        columns.add(new Column("Full run", Quantity.LENGTH));
        List<List<Cell>> rows =
                matrix.rows().stream().map(row -> interferenceRow(matrix, row)).toList();
        return new PageTable(
                "interference-" + number, "Bore interference on " + Words.date(matrix.date()), columns, rows);
    }

    private static List<Cell> interferenceRow(Interference matrix, Interference.Row row) {
        double sum = row.drawdowns().stream().mapToDouble(Double::doubleValue).sum();
        int self = matrix.causes().indexOf(row.site());
        double own = self < 0 ? 0 : row.drawdowns().get(self);
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.text(row.site()));
        row.drawdowns().forEach(drawdown -> cells.add(Cell.number(Quantity.LENGTH, drawdown)));
        cells.add(Cell.number(Quantity.SHARE, Math.abs(sum) < 1e-9 ? Double.NaN : (sum - own) / sum * 100));
        cells.add(Cell.number(Quantity.LENGTH, sum));
        cells.add(Cell.number(Quantity.LENGTH, row.whole()));
        return cells;
    }

    static PageTable sites(ReportContent content) {
        List<Column> columns = List.of(
                new Column("Name", Quantity.TEXT),
                new Column("Kind", Quantity.TEXT),
                new Column("Holder", Quantity.TEXT),
                new Column("State at the end", Quantity.TEXT),
                new Column("Easting", Quantity.LENGTH),
                new Column("Northing", Quantity.LENGTH),
                new Column("Ground level", Quantity.LENGTH),
                new Column("Outlet level", Quantity.LENGTH),
                new Column("Top of aquifer", Quantity.LENGTH),
                new Column("Pump intake", Quantity.LENGTH));
        return new PageTable(
                "sites",
                "Bores, springs and watched points",
                columns,
                content.sites().stream().map(ResultTables::site).toList());
    }

    private static List<Cell> site(Site site) {
        return List.of(
                Cell.text(site.name()),
                Cell.text(site.kind().words()),
                Cell.text(site.holder().isBlank() ? "\u2013" : site.holder()),
                Cell.text(site.states().get(site.states().size() - 1).words()),
                Cell.number(Quantity.LENGTH, site.x()),
                Cell.number(Quantity.LENGTH, site.y()),
                Cell.number(Quantity.LENGTH, site.ground()),
                Cell.number(Quantity.LENGTH, site.outlet()),
                Cell.number(Quantity.LENGTH, site.aquiferTop()),
                Cell.number(Quantity.LENGTH, site.intake()));
    }
}
