package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.findings.InterferenceTable;
import org.headfall.scenarios.recording.RunCalendar;

/**
 * Writes {@code interference.csv}: one line a bore, spring or protected point and report date, with one column a cause, then
 * the sum of the causes beside the drawdown that the full run found, the shares and what they cost.
 */
final class InterferenceCsv {

    private InterferenceCsv() {}

    static void write(Path target, List<InterferenceTable> tables, List<String> method, RunCalendar calendar)
            throws IOException {
        List<String> causes = tables.isEmpty() ? List.of() : tables.get(0).causes();
        try (CsvFile file = new CsvFile(target, header(causes))) {
            for (InterferenceTable table : tables) {
                for (int row = 0; row < table.stations().size(); row++) {
                    file.line(line(table, row, String.join(" ", method), calendar));
                }
            }
            file.complete();
        }
    }

    private static List<String> header(List<String> causes) {
        List<String> header = new ArrayList<>(List.of("when", "date", "drawdown at"));
        causes.forEach(cause -> header.add("due to " + cause + " (m)"));
        header.addAll(List.of(
                "sum of these causes (m)",
                "drawdown in the full run (m)",
                "sum less full run (m)",
                "own share (m)",
                "share of neighbouring bores (m)",
                "discharge (m3/d)",
                "extra lift because of neighbours (m)",
                "discharge without neighbours (m3/d)",
                "yield lost to neighbours (m3/d)",
                "how it was computed"));
        return header;
    }

    private static CsvLineCells line(InterferenceTable table, int row, String method, RunCalendar calendar) {
        CsvLineCells cells = new CsvLineCells()
                .text(table.label())
                .date(calendar.at(table.day()))
                .text(table.stations().get(row));
        double sum = 0;
        for (double part : table.drawdown()[row]) {
            cells.number(part, 4);
            sum += part;
        }
        double remainder = table.remainder()[row];
        cells.number(sum, 4).number(sum + remainder, 4).number(-remainder, 4);
        if (row < table.bores().size()) {
            bore(cells, table.bores().get(row));
        } else {
            for (int i = 0; i < 6; i++) {
                cells.empty();
            }
        }
        return cells.text(method);
    }

    private static void bore(CsvLineCells cells, InterferenceTable.BoreShare share) {
        cells.number(share.own(), 4)
                .number(share.neighbours(), 4)
                .number(share.rate(), 2)
                .number(share.extraLift(), 2)
                .number(share.rateAlone(), 2)
                .number(share.lossOfYield(), 2);
    }
}
