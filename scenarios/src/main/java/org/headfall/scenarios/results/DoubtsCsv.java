package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.doubts.ErrorBudget;
import org.headfall.scenarios.recording.RunCalendar;

/** Writes {@code doubts.csv}: the error budget, one line a station and report date. */
final class DoubtsCsv {

    private static final List<String> HEADER =
            List.of("station", "when", "date", "time (m)", "grid (m)", "solver (m)", "boundary (m)", "together (m)");

    private DoubtsCsv() {}

    static void write(Path target, ErrorBudget budget, RunCalendar calendar) throws IOException {
        CsvFile.write(
                target,
                HEADER,
                budget.lines(),
                line -> new CsvLineCells()
                        .text(line.station())
                        .text(line.label())
                        .date(calendar.at(line.day()))
                        .number(line.time(), 5)
                        .number(line.grid(), 5)
                        .number(line.solver(), 5)
                        .number(line.boundary(), 5)
                        .number(line.together(), 5));
    }
}
