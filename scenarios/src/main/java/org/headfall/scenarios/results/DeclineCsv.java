package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.findings.Decline;
import org.headfall.scenarios.findings.DeclineAnalysis;
import org.headfall.scenarios.recording.RunCalendar;

/** Writes {@code decline.csv}: one line a station and report date. */
final class DeclineCsv {

    private static final List<String> HEADER = List.of(
            "station",
            "kind",
            "when",
            "date",
            "head (m above datum)",
            "decline over last five years, same day of the year (m/yr)",
            "head above aquifer top, of that at the start (%)",
            "head below aquifer top from",
            "years left to aquifer top at this decline",
            "head below outlet from",
            "years left to outlet at this decline",
            "level below pump intake from",
            "years left to pump intake at this decline",
            "remark");

    private static final double PER_CENT = 100;

    private DeclineCsv() {}

    static void write(Path target, FinishedRun run) throws IOException {
        RunCalendar calendar = run.description().calendar();
        CsvFile.write(
                target,
                HEADER,
                new DeclineAnalysis(run.description(), run.recording()).ofAllStations(),
                decline -> line(decline, calendar));
    }

    private static CsvLineCells line(Decline decline, RunCalendar calendar) {
        OptionalDouble left = decline.availableLeft();
        CsvLineCells cells = new CsvLineCells()
                .text(decline.station())
                .text(decline.kind())
                .text(decline.label())
                .date(calendar.at(decline.day()))
                .number(decline.head(), 3)
                .number(decline.slope(), 4)
                .number(left.isPresent() ? PER_CENT * left.getAsDouble() : Double.NaN, 1);
        for (Decline.Reached reached : List.of(decline.aquiferTop(), decline.outlet(), decline.intake())) {
            if (reached.reachedDay().isPresent()) {
                cells.date(calendar.at(reached.reachedDay().getAsDouble())
                        .toLocalDate()
                        .atStartOfDay());
            } else {
                cells.empty();
            }
            cells.number(reached.yearsLeft(), 1);
        }
        return cells.text(remark(decline));
    }

    /** Why years are left blank where there is a level to reach. */
    private static String remark(Decline decline) {
        if (decline.slope().isEmpty()) {
            return "The run has not yet lasted five years.";
        }
        if (decline.slope().getAsDouble() <= 0) {
            return "Head does not fall.";
        }
        List<String> later = new ArrayList<>();
        add(later, "aquifer top", decline.aquiferTop());
        add(later, "outlet", decline.outlet());
        add(later, "pump intake", decline.intake());
        return later.isEmpty()
                ? ""
                : "More than " + Decline.Reached.LONGEST_YEARS + " years are left to: " + String.join(", ", later)
                        + ".";
    }

    private static void add(List<String> later, String level, Decline.Reached reached) {
        if (reached.later()) {
            later.add(level);
        }
    }
}
