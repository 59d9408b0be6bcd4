package org.headfall.scenarios.report.page;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.findings.HeadPressure;
import org.headfall.scenarios.findings.ShareBase;
import org.headfall.scenarios.report.content.ArtesianHead;
import org.headfall.scenarios.report.content.Interference;
import org.headfall.scenarios.report.content.LimitOutcome;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.Site;
import org.headfall.scenarios.report.content.SiteKind;
import org.headfall.scenarios.report.page.PageTable.Column;

/** The tables of results. */
final class ResultTables {

    private ResultTables() {}

    static PageTable limits(ReportContent content) {
        List<Column> columns = List.of(
                new Column("Limit", Quantity.TEXT),
                new Column("Outcome", Quantity.TEXT),
                new Column("Crossed from", Quantity.DATE),
                new Column("At", Quantity.TEXT),
                new Column("Allowed", Quantity.TEXT),
                new Column("Reached", Quantity.TEXT),
                new Column("Worst on", Quantity.DATE),
                new Column("What counts", Quantity.LONG_TEXT),
                new Column("Remark", Quantity.LONG_TEXT),
                new Column("Clause", Quantity.LONG_TEXT));
        return new PageTable(
                "limits",
                "Limits and what became of them",
                columns,
                content.limits().stream().map(ResultTables::limit).toList());
    }

    private static List<Cell> limit(LimitOutcome limit) {
        Cell outcome = Cell.text(limit.verdict().words())
                .marked(
                        switch (limit.verdict()) {
                            case HOLDS -> Cell.Tone.GOOD;
                            case CROSSED -> Cell.Tone.BAD;
                            case UNDECIDED, NOT_EVALUATED -> Cell.Tone.CLOSE;
                        });
        return List.of(
                Cell.text(limit.name()),
                outcome,
                Cell.date(limit.crossedOn(), "\u2013"),
                Cell.text(limit.site()),
                Cell.figure(allowed(limit), limit.allowed()),
                Cell.figure(reached(limit), limit.reached()),
                Cell.date(limit.reachedOn(), "\u2013"),
                Cell.text(limit.quantity() + ", " + limit.conditions()),
                Cell.text(limit.remark()),
                Cell.text(limit.clause()));
    }

    /** The allowed value of a limit with its unit. */
    static Sentence allowed(LimitOutcome limit) {
        return Sentence.of("").and(Quantity.ofLimit(limit.unit()), limit.allowed());
    }

    /** The worst value of a limit with its unit and error. */
    static Sentence reached(LimitOutcome limit) {
        return Sentence.of("").and(Quantity.ofLimit(limit.unit()), limit.reached(), limit.error());
    }

    static PageTable artesianHead(ReportContent content) {
        List<Column> columns = List.of(
                new Column("Site", Quantity.TEXT),
                new Column("Date", Quantity.DATE),
                new Column("Head above ground before", Quantity.HEIGHT),
                new Column("Pressure before, water of 20\u00a0\u00b0C", Quantity.PRESSURE),
                new Column("Pressure before, hot water", Quantity.PRESSURE),
                new Column("Head above ground then", Quantity.HEIGHT),
                new Column("Pressure then, hot water", Quantity.PRESSURE),
                new Column("Loss", Quantity.HEIGHT),
                new Column("Decline over five years", Quantity.HEIGHT_RATE),
                new Column("Working water level below ground", Quantity.HEIGHT),
                new Column("Water above pump intake", Quantity.HEIGHT),
                new Column("Flow before", Quantity.FLOW),
                new Column("Flow then", Quantity.FLOW),
                new Column("Stops flowing", Quantity.DATE));
        List<List<Cell>> rows = new ArrayList<>();
        for (ArtesianHead head : content.artesianHeads()) {
            boolean ofItself = flowsByItself(content, head.site());
            head.losses().forEach(loss -> rows.add(loss(head, loss, ofItself && loss.flow() > 0)));
        }
        return new PageTable("artesian-head", "Loss of artesian head", columns, rows);
    }

    /** Of pumps and of bores that are shut nobody says that they flow. */
    private static boolean flowsByItself(ReportContent content, String name) {
        return content.sites().stream()
                .filter(site -> site.name().equals(name))
                .anyMatch(site -> site.kind() == SiteKind.SPRING || site.kind() == SiteKind.FREE_FLOWING_BORE);
    }

    private static List<Cell> loss(ArtesianHead head, ArtesianHead.Loss loss, boolean flows) {
        Cell above = Cell.number(Quantity.HEIGHT, loss.aboveIntake());
        Cell stops = Cell.date(head.stopsFlowing(), flows ? "keeps flowing" : "\u2013");
        return List.of(
                Cell.text(head.site()),
                Cell.date(loss.date(), ""),
                Cell.number(Quantity.HEIGHT, head.before()),
                Cell.number(
                        Quantity.PRESSURE, HeadPressure.atGround(head.before()).orElse(0)),
                Cell.number(Quantity.PRESSURE, head.hotPressureBefore()),
                Cell.number(Quantity.HEIGHT, loss.headAboveGround()),
                Cell.number(Quantity.PRESSURE, loss.hotPressure()),
                Cell.number(Quantity.HEIGHT, loss.loss()),
                Cell.number(Quantity.HEIGHT_RATE, loss.declineRate()),
                Cell.number(Quantity.HEIGHT, loss.waterLevel()),
                loss.aboveIntake() <= 0 ? above.marked(Cell.Tone.BAD) : above,
                Cell.number(Quantity.FLOW, head.flowBefore()),
                Cell.number(Quantity.FLOW, loss.flow()),
                head.stopsFlowing() == null ? stops : stops.marked(Cell.Tone.BAD));
    }

    static PageTable interference(Interference matrix, int number) {
        List<Column> columns = new ArrayList<>();
        columns.add(new Column("Drawdown (rows) due to (columns)", Quantity.TEXT));
        matrix.causes().forEach(cause -> columns.add(new Column(cause, Quantity.HEIGHT)));
        columns.add(new Column("By others", Quantity.TEXT));
        columns.add(new Column("Sum of parts", Quantity.HEIGHT));
        columns.add(new Column("Full run", Quantity.HEIGHT));
        List<List<Cell>> rows =
                matrix.rows().stream().map(row -> interferenceRow(matrix, row)).toList();
        return new PageTable(
                "interference-" + number,
                "Drawdown since the start by cause, on " + Words.date(matrix.date()),
                columns,
                rows,
                matrix.causes().size());
    }

    private static List<Cell> interferenceRow(Interference matrix, Interference.Row row) {
        double sum = row.drawdowns().stream().mapToDouble(Double::doubleValue).sum();
        int self = matrix.causes().indexOf(row.site());
        double own = self < 0 ? 0 : row.drawdowns().get(self);
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.text(row.site()));
        row.drawdowns().forEach(drawdown -> cells.add(Cell.number(Quantity.HEIGHT, drawdown)));
        cells.add(byOthers(own, sum));
        cells.add(Cell.number(Quantity.HEIGHT, sum));
        cells.add(Cell.number(Quantity.HEIGHT, row.whole()));
        return cells;
    }

    /**
     * "3.20 m (81.0 %)", or the reason why there is no share. Where the site itself does the opposite, as a bore that flows less
     * because of others, there is none: what others do is then more than all.
     */
    private static Cell byOthers(double own, double sum) {
        double others = sum - own;
        ShareBase base = ShareBase.of(ShareBase.LEAST_DRAWDOWN, sum, own, others);
        boolean against = own * others < 0 && Math.abs(own) >= ShareBase.LEAST_DRAWDOWN;
        Sentence figure = Sentence.of("").and(Quantity.HEIGHT, others).and(" (");
        if (against) {
            figure = figure.and("no share: own part ").and(Quantity.HEIGHT, own);
        } else if (base.percent(others).isPresent()) {
            figure = figure.and(Quantity.SHARE, base.percent(others).getAsDouble());
        } else {
            figure = figure.and("no share: " + base.sense().whyNot());
        }
        return Cell.figure(figure.and(")"), others);
    }

    static PageTable sites(ReportContent content) {
        List<Column> columns = List.of(
                new Column("Name", Quantity.TEXT),
                new Column("Kind", Quantity.TEXT),
                new Column("Holder", Quantity.TEXT),
                new Column("State at the end", Quantity.TEXT),
                new Column("Easting", Quantity.LEVEL),
                new Column("Northing", Quantity.LEVEL),
                new Column("Ground level", Quantity.LEVEL),
                new Column("Outlet level", Quantity.LEVEL),
                new Column("Top of aquifer", Quantity.LEVEL),
                new Column("Pump intake", Quantity.LEVEL),
                new Column("Lowest level", Quantity.LEVEL),
                new Column("Operation", Quantity.TEXT));
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
                Cell.number(Quantity.LEVEL, site.x()),
                Cell.number(Quantity.LEVEL, site.y()),
                Cell.number(Quantity.LEVEL, site.ground()),
                Cell.number(Quantity.LEVEL, site.outlet()),
                Cell.number(Quantity.LEVEL, site.aquiferTop()),
                Cell.number(Quantity.LEVEL, site.intake()),
                Cell.number(Quantity.LEVEL, site.lowestLevel()),
                Cell.text(site.operation().isBlank() ? "\u2013" : site.operation()));
    }
}
