package org.headfall.scenarios.report.page;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.headfall.scenarios.report.content.DatedField;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.page.PageTable.Column;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.flow.WaterBalance.Kind;
import org.headfall.solver.flow.WaterBalance.Term;

/** The water balance: what came in and went out between the report dates, by kind, and over the period by name. */
final class BalanceTables {

    private static final Map<Kind, String> TITLES = new EnumMap<>(Map.of(
            Kind.STORAGE, "Storage in the aquifer",
            Kind.SEALING_BED_STORAGE, "Storage in the sealing bed",
            Kind.LEAKAGE, "Leakage through the sealing bed",
            Kind.BOUNDARY, "Outer boundaries",
            Kind.RECHARGE, "Recharge",
            Kind.SPRING, "Springs",
            Kind.BORE, "Bores"));

    private static final double PER_CENT = 100;

    private BalanceTables() {}

    static String title(Kind kind) {
        return TITLES.getOrDefault(kind, kind.name());
    }

    /** Net volumes by kind between the report dates, into the aquifer positive. */
    static PageTable byInterval(ReportContent content) {
        List<Kind> kinds = content.balance().stream()
                .flatMap(balance -> balance.terms().stream())
                .map(Term::kind)
                .distinct()
                .sorted()
                .toList();
        List<Column> columns = new ArrayList<>();
        columns.add(new Column("Until", Quantity.TEXT));
        kinds.forEach(kind -> columns.add(new Column(title(kind), Quantity.VOLUME)));
        columns.add(new Column("All that came in", Quantity.VOLUME));
        columns.add(new Column("Not accounted for", Quantity.VOLUME));
        columns.add(new Column("Of what came in", Quantity.TEXT));
        List<List<Cell>> rows = new ArrayList<>();
        LocalDate from = content.heading().start();
        for (LocalDate to : content.map().heads().stream().map(DatedField::date).toList()) {
            List<WaterBalance> within = within(content, from, to);
            if (!within.isEmpty()) {
                rows.add(interval(to, kinds, within));
            }
            from = to;
        }
        return new PageTable(
                "balance",
                "Water balance between the dates of the map (into the flow of the aquifer positive)",
                columns,
                rows);
    }

    private static List<WaterBalance> within(ReportContent content, LocalDate from, LocalDate to) {
        long origin = content.heading().start().toEpochDay();
        return content.balance().stream()
                .filter(balance -> {
                    double middle = (balance.fromDay() + balance.toDay()) / 2 + origin;
                    return middle > from.toEpochDay() && middle <= to.toEpochDay();
                })
                .toList();
    }

    private static List<Cell> interval(LocalDate to, List<Kind> kinds, List<WaterBalance> balances) {
        Map<Kind, Double> net = new EnumMap<>(Kind.class);
        balances.stream()
                .flatMap(balance -> balance.terms().stream())
                .forEach(term -> net.merge(term.kind(), term.inflow() - term.outflow(), Double::sum));
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.date(to, ""));
        kinds.forEach(kind -> cells.add(Cell.number(Quantity.VOLUME, net.getOrDefault(kind, 0.0))));
        double inflow = balances.stream().mapToDouble(WaterBalance::inflow).sum();
        double missing =
                balances.stream().mapToDouble(WaterBalance::discrepancy).sum();
        cells.add(Cell.number(Quantity.VOLUME, inflow));
        cells.add(Cell.number(Quantity.VOLUME, missing));
        double share = PER_CENT * missing / inflow;
        cells.add(Cell.figure(
                Sentence.of(Double.isFinite(share) ? String.format(Locale.ROOT, "%.0e\u00a0%%", share) : "\u2013"),
                share));
        return cells;
    }

    /** Volumes in and out over the whole period, by name, the largest first. */
    static PageTable byName(ReportContent content) {
        record Volumes(Kind kind, double inflow, double outflow) {}
        Map<String, Volumes> sums = new LinkedHashMap<>();
        content.balance().stream()
                .flatMap(balance -> balance.terms().stream())
                .forEach(term -> sums.merge(
                        term.kind() + " " + term.name(),
                        new Volumes(term.kind(), term.inflow(), term.outflow()),
                        (a, b) -> new Volumes(a.kind(), a.inflow() + b.inflow(), a.outflow() + b.outflow())));
        double allIn = sums.values().stream().mapToDouble(Volumes::inflow).sum();
        double allOut = sums.values().stream().mapToDouble(Volumes::outflow).sum();
        List<List<Cell>> rows = sums.entrySet().stream()
                .sorted(Comparator.comparingDouble(
                        entry -> -entry.getValue().inflow() - entry.getValue().outflow()))
                .map(entry -> List.of(
                        Cell.text(entry.getKey().substring(entry.getKey().indexOf(' ') + 1)),
                        Cell.text(title(entry.getValue().kind())),
                        Cell.number(Quantity.VOLUME, entry.getValue().inflow()),
                        Cell.number(Quantity.SHARE, PER_CENT * entry.getValue().inflow() / allIn),
                        Cell.number(Quantity.VOLUME, entry.getValue().outflow()),
                        Cell.number(Quantity.SHARE, PER_CENT * entry.getValue().outflow() / allOut)))
                .toList();
        return new PageTable(
                "balance-terms",
                "Water balance of the whole period, by name",
                List.of(
                        new Column("Name", Quantity.TEXT),
                        new Column("Kind", Quantity.TEXT),
                        new Column("Into the flow of the aquifer", Quantity.VOLUME),
                        new Column("Of all that came in", Quantity.SHARE),
                        new Column("Out of it", Quantity.VOLUME),
                        new Column("Of all that went out", Quantity.SHARE)),
                rows);
    }
}
