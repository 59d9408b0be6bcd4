package org.headfall.cli.answer;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.results.CaseTable;
import picocli.CommandLine.Help.Ansi;

/** The answers of all cases in words and figures, one after the other, and at the end a line a case. */
public final class CaseText {

    /** Width of the names of cases, that of the longest that there is and some. */
    private static final int NAME = 34;

    private CaseText() {}

    /**
     * Writes the answers.
     *
     * @param answers the answers
     * @param out where to
     * @param ansi whether verdicts are coloured
     */
    public static void write(CaseAnswers answers, PrintWriter out, Ansi ansi) {
        answers.cases().values().forEach(answer -> {
            AnswerText.write(answer, out, ansi);
            out.println();
        });
        TextBlock block = new TextBlock(out);
        block.sentence("Limits by case, counted once at each place where they are judged:");
        out.printf(
                Locale.ROOT,
                "%-" + NAME + "s%7s%6s%9s%11s%12s%n",
                "Case",
                "limits",
                "kept",
                "crossed",
                "undecided",
                "not judged");
        answers.cases().forEach((name, answer) -> {
            line(name, answer.limits(), out);
            worst(answer.limits()).ifPresent(limit -> block.item("closest: " + words(limit)));
        });
        out.println();
        out.println("All cases beside each other: " + Path.of(answers.folder()).resolve(CaseTable.NAME));
    }

    private static void line(String name, List<LimitAnswer> limits, PrintWriter out) {
        out.printf(
                Locale.ROOT,
                "%-" + NAME + "s%7d%6d%9d%11d%12d%n",
                TextBlock.printable(name),
                limits.size(),
                count(limits, Outcome.Kind.HOLDS),
                count(limits, Outcome.Kind.CROSSED),
                count(limits, Outcome.Kind.UNDECIDED),
                count(limits, Outcome.Kind.NOT_EVALUATED));
    }

    private static long count(List<LimitAnswer> limits, Outcome.Kind kind) {
        return limits.stream().filter(limit -> limit.outcome() == kind).count();
    }

    /** The limit with the smallest relative margin, crossed ones first, then those not sure. */
    private static Optional<LimitAnswer> worst(List<LimitAnswer> limits) {
        return limits.stream()
                .filter(limit -> limit.relativeMargin().isPresent())
                .min(Comparator.comparing((LimitAnswer limit) -> !limit.crossed())
                        .thenComparing(LimitAnswer::holds)
                        .thenComparing(limit -> limit.relativeMargin().orElseThrow()));
    }

    private static String words(LimitAnswer limit) {
        return limit.name() + ", at " + limit.station() + VerdictText.reached(limit) + " ("
                + limit.outcome().words() + ")";
    }
}
