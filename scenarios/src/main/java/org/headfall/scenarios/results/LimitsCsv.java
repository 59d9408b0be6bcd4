package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.headfall.scenarios.limits.CauseShare;
import org.headfall.scenarios.limits.CauseSplit;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;

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
            "split by cause",
            "shares by cause on that day",
            "how sure it has to be (%)",
            "remark",
            "text of the limit");

    private static final double PER_CENT = 100;
    private static final String UNTESTED = "Errors of grid and far boundaries were not tested (run --doubts).";

    private LimitsCsv() {}

    /**
     * Writes the table.
     *
     * @param target the file
     * @param results limits and outcomes
     * @param tested whether numerical errors hold those of grid and boundary
     * @param run the run
     * @throws IOException if it cannot be written
     */
    static void write(Path target, List<LimitResult> results, boolean tested, RunDescription run) throws IOException {
        CsvFile.write(target, HEADER, results, result -> line(result, tested, run));
    }

    private static CsvLineCells line(LimitResult result, boolean tested, RunDescription run) {
        Limit limit = result.limit();
        CsvLineCells cells = new CsvLineCells()
                .text(limit.name())
                .text(limit.quantity().words())
                .text(limit.station())
                .text(limit.comparison().cause())
                .text(limit.quantity().measuresAnEffect() ? limit.comparison().words() : "nothing")
                .text(limit.period().words())
                .number(limit.quantity().allowed(), 3)
                .text(limit.quantity().unit())
                .text(result.outcome().words());
        outcome(cells, result, run);
        return cells.text((remark(result.outcome()) + " " + untested(result.outcome(), tested)).strip())
                .text(limit.text());
    }

    private static void outcome(CsvLineCells cells, LimitResult result, RunDescription run) {
        RunCalendar calendar = run.calendar();
        Optional<Outcome.Worst> worst = result.outcome().worstIfAny();
        if (worst.isPresent()) {
            cells.number(worst.get().margin(), 3).number(worst.get().error(), 4);
            boolean dated = result.limit().quantity().changesOverTime();
            date(cells, dated ? firstDay(result.outcome()) : OptionalDouble.empty(), calendar);
            cells.number(worst.get().value(), 3);
            date(cells, dated ? OptionalDouble.of(worst.get().day()) : OptionalDouble.empty(), calendar);
        } else {
            cells.empty().empty().empty().empty().empty();
        }
        cells.text(CauseSplit.of(result, run.endDay()).wordsFor(result.limit())).text(shares(result.shares()));
        OptionalDouble sure = result.limit().howSure();
        if (sure.isPresent()) {
            cells.number(PER_CENT * sure.getAsDouble(), 1);
        } else {
            cells.empty();
        }
    }

    private static OptionalDouble firstDay(Outcome outcome) {
        if (outcome instanceof Outcome.Crossed crossed) {
            return OptionalDouble.of(crossed.firstDay());
        }
        return outcome instanceof Outcome.Undecided undecided ? undecided.firstDay() : OptionalDouble.empty();
    }

    private static void date(CsvLineCells cells, OptionalDouble day, RunCalendar calendar) {
        if (day.isPresent()) {
            cells.date(calendar.at(day.getAsDouble()));
        } else {
            cells.empty();
        }
    }

    private static String shares(List<CauseShare> shares) {
        return shares.stream()
                .map(share -> share.cause() + ": " + CsvLineCells.rounded(share.drawdown(), 3))
                .collect(Collectors.joining("; "));
    }

    /** Values without numerical error, such as given volumes, depend on neither grid nor boundary. */
    private static String untested(Outcome outcome, boolean tested) {
        boolean computed = outcome.worstIfAny().map(worst -> worst.error() > 0).orElse(false);
        return tested || !computed ? "" : UNTESTED;
    }

    private static String remark(Outcome outcome) {
        if (outcome instanceof Outcome.NotEvaluated not) {
            return not.reason();
        }
        String note = outcome.worstIfAny().map(Outcome.Worst::note).orElse("");
        return outcome instanceof Outcome.Undecided undecided
                        && !undecided.reason().equals(note)
                ? (undecided.reason() + " " + note).strip()
                : note;
    }
}
