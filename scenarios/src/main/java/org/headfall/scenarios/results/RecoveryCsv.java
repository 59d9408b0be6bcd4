package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.headfall.scenarios.findings.Recoveries;
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
            "numerical error (m)",
            "remark");

    private RecoveryCsv() {}

    static void write(Path target, Recoveries recoveries, RunCalendar calendar) throws IOException {
        List<CsvLineCells> lines = Stream.concat(
                        recoveries.lines().stream().map(recovery -> line(recovery, calendar)),
                        recoveries.missing().stream().map(RecoveryCsv::missing))
                .toList();
        CsvFile.write(target, HEADER, lines, cells -> cells);
    }

    /** A line that says why a taking has none. */
    private static CsvLineCells missing(String reason) {
        CsvLineCells cells = new CsvLineCells();
        for (int i = 1; i < HEADER.size(); i++) {
            cells.empty();
        }
        return cells.text(reason);
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
                .number(recovery.error(), 4)
                .empty();
    }

    private static LocalDateTime midnight(double day, RunCalendar calendar) {
        return calendar.at(day).toLocalDate().atStartOfDay();
    }

    private static double years(Recovery recovery, double day) {
        return (day - recovery.stopDay()) / RunCalendar.DAYS_PER_YEAR;
    }
}
