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

    /** Why years, and the slope, are left blank. */
    private static String remark(Decline decline) {
        List<String> sentences = new ArrayList<>();
        if (decline.slope().isEmpty()) {
            sentences.add("The run has not yet lasted five years.");
        }
        add(sentences, decline, Decline.Left.PASSED, "Not above any more: ");
        add(sentences, decline, Decline.Left.NOT_FALLING, "No fall towards: ");
        add(
                sentences,
                decline,
                Decline.Left.LATER,
                "More than " + Decline.Reached.LONGEST_YEARS + " years are left to: ");
        return String.join(" ", sentences);
    }

    private static void add(List<String> sentences, Decline decline, Decline.Left left, String beginning) {
        List<String> levels = new ArrayList<>();
        add(levels, "aquifer top", decline.aquiferTop(), left);
        add(levels, "outlet", decline.outlet(), left);
        add(levels, "pump intake", decline.intake(), left);
        if (!levels.isEmpty()) {
            sentences.add(beginning + String.join(", ", levels) + ".");
        }
    }

    private static void add(List<String> levels, String level, Decline.Reached reached, Decline.Left left) {
        if (reached.left() == left) {
            levels.add(level);
        }
    }
}
