package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.recording.RunCalendar;

/** Writes {@code limits.csv}: one line a limit. */
final class LimitsCsv {

    private static final List<String> HEADER = List.of(
            "limit",
            "quantity",
            "place",
            "cause",
            "compared with",
            "when",
            "allowed",
            "unit",
            "outcome",
            "margin (negative: beyond the limit)",
            "numerical error",
            "first crossed on",
            "worst value",
            "worst on",
            "remark",
            "text of the limit");

    private LimitsCsv() {}

    static void write(Path target, List<LimitResult> results, RunCalendar calendar) throws IOException {
        try (CsvFile file = new CsvFile(target, HEADER)) {
            for (LimitResult result : results) {
                file.line(line(result, calendar));
            }
            file.complete();
        }
    }

    private static CsvLineCells line(LimitResult result, RunCalendar calendar) {
        Limit limit = result.limit();
        CsvLineCells cells = new CsvLineCells()
                .text(limit.name())
                .text(limit.quantity().words())
                .text(limit.station())
                .text(limit.comparison().cause())
                .text(limit.comparison().words())
                .text(limit.period().words())
                .number(limit.quantity().allowed(), 3)
                .text(limit.quantity().unit())
                .text(result.outcome().words());
        outcome(cells, result.outcome(), calendar);
        return cells.text(limit.text());
    }

    private static void outcome(CsvLineCells cells, Outcome outcome, RunCalendar calendar) {
        if (outcome instanceof Outcome.Holds holds) {
            worst(cells, OptionalDouble.empty(), holds.worst(), "", calendar);
        } else if (outcome instanceof Outcome.Crossed crossed) {
            worst(cells, OptionalDouble.of(crossed.firstDay()), crossed.worst(), "", calendar);
        } else if (outcome instanceof Outcome.Undecided undecided) {
            worst(cells, undecided.firstDay(), undecided.worst(), undecided.reason(), calendar);
        } else if (outcome instanceof Outcome.NotEvaluated not) {
            cells.empty().empty().empty().empty().empty().text(not.reason());
        }
    }

    private static void worst(
            CsvLineCells cells, OptionalDouble firstDay, Outcome.Worst worst, String remark, RunCalendar calendar) {
        cells.number(worst.margin(), 3).number(worst.error(), 4);
        if (firstDay.isPresent()) {
            cells.date(calendar.at(firstDay.getAsDouble()));
        } else {
            cells.empty();
        }
        cells.number(worst.value(), 3).date(calendar.at(worst.day())).text(remark);
    }
}
