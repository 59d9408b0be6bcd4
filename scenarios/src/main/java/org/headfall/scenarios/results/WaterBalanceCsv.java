package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.quantity.VolumeUnit;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.solver.flow.WaterBalance;

/** Writes {@code water-balance.csv}: one line a period and term, and one for the total and its discrepancy. */
final class WaterBalanceCsv {

    private static final List<String> HEADER = List.of(
            "from",
            "to",
            "term",
            "name",
            "into the aquifer (m3)",
            "out of the aquifer (m3)",
            "net into the aquifer (m3)",
            "net into the aquifer (ML)",
            "share of all that came in (per cent)",
            "share of all that went out (per cent)",
            "discrepancy over throughput (per cent)",
            "largest discrepancy of a time step over its throughput (per cent)");

    private static final double PER_CENT = 100;

    private WaterBalanceCsv() {}

    static void write(Path target, List<WaterBalance> balances, RunCalendar calendar) throws IOException {
        try (CsvFile file = new CsvFile(target, HEADER)) {
            for (WaterBalance balance : balances) {
                for (WaterBalance.Term term : balance.terms()) {
                    file.line(period(balance, calendar)
                            .text(words(term.kind()))
                            .text(term.name())
                            .number(term.inflow(), 1)
                            .number(term.outflow(), 1)
                            .number(term.inflow() - term.outflow(), 1)
                            .number(VolumeUnit.MEGALITRES.of(term.inflow() - term.outflow()), 3)
                            .number(share(term.inflow(), balance.inflow()), 2)
                            .number(share(term.outflow(), balance.outflow()), 2)
                            .empty()
                            .empty());
                }
                file.line(period(balance, calendar)
                        .text("total")
                        .empty()
                        .number(balance.inflow(), 1)
                        .number(balance.outflow(), 1)
                        .number(balance.discrepancy(), 4)
                        .number(VolumeUnit.MEGALITRES.of(balance.discrepancy()), 7)
                        .number(share(balance.inflow(), balance.inflow()), 2)
                        .number(share(balance.outflow(), balance.outflow()), 2)
                        .number(PER_CENT * balance.relativeDiscrepancy(), 8)
                        .number(PER_CENT * balance.largestStepDiscrepancy(), 8));
            }
            file.complete();
        }
    }

    /** Per cent of a whole; not a number, and so an empty cell, where nothing flows. */
    private static double share(double part, double whole) {
        return PER_CENT * part / whole;
    }

    private static CsvLineCells period(WaterBalance balance, RunCalendar calendar) {
        return new CsvLineCells().date(calendar.at(balance.fromDay())).date(calendar.at(balance.toDay()));
    }

    private static String words(WaterBalance.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
