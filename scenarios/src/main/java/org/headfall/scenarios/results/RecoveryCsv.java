package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.findings.Recovery;
import org.headfall.scenarios.recording.RunCalendar;

/** Writes {@code recovery.csv}: one line a taking and station. */
final class RecoveryCsv {

    private static final List<String> HEADER = List.of(
            "taking that stops",
            "stops on",
            "station",
            "kind",
            "drawdown then (m)",
            "largest drawdown from then on (m)",
            "on",
            "years after the stop",
            "has it passed",
            "nine tenths recovered on",
            "years from the stop until nine tenths are recovered",
            "numerical error (m)");

    private RecoveryCsv() {}

    static void write(Path target, List<Recovery> recoveries, RunCalendar calendar) throws IOException {
        CsvFile.write(target, HEADER, recoveries, recovery -> line(recovery, calendar));
    }

    private static CsvLineCells line(Recovery recovery, RunCalendar calendar) {
        CsvLineCells cells = new CsvLineCells()
                .text(recovery.taking())
                .date(calendar.at(recovery.stopDay()))
                .text(recovery.station())
                .text(recovery.kind())
                .number(recovery.atStop(), 3)
                .number(recovery.largest(), 3);
        if (recovery.isCertain()) {
            cells.date(midnight(recovery.largestDay(), calendar))
                    .number(years(recovery, recovery.largestDay()), 2)
                    .text(
                            recovery.hasPassed()
                                    ? "yes"
                                    : "not by "
                                            + midnight(recovery.lastDay(), calendar)
                                                    .toLocalDate());
        } else {
            cells.empty().empty().text("less than the numerical error");
        }
        OptionalDouble recovered = recovery.recoveredDay();
        if (recovered.isPresent()) {
            cells.date(midnight(recovered.getAsDouble(), calendar));
        } else {
            cells.empty();
        }
        return cells.number(recovered.isPresent() ? years(recovery, recovered.getAsDouble()) : Double.NaN, 3)
                .number(recovery.error(), 4);
    }

    private static LocalDateTime midnight(double day, RunCalendar calendar) {
        return calendar.at(day).toLocalDate().atStartOfDay();
    }

    private static double years(Recovery recovery, double day) {
        return (day - recovery.stopDay()) / RunCalendar.DAYS_PER_YEAR;
    }
}
