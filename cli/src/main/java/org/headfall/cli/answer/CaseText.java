package org.headfall.cli.answer;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.headfall.scenarios.results.CaseTable;
import picocli.CommandLine.Help.Ansi;

/** The answers of all cases in words and figures, one after the other, and at the end a line a case. */
public final class CaseText {

    /** Width of the names of cases, that of the longest that there is and some. */
    private static final int NAME = 36;

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
        out.printf(Locale.ROOT, "%-" + NAME + "s%8s%8s%9s%11s%n", "Case", "limits", "kept", "crossed", "undecided");
        answers.cases().forEach((name, answer) -> {
            line(name, answer.limits(), out);
            worst(answer.limits()).ifPresent(limit -> block.item("worst: " + words(limit)));
        });
        out.println();
        out.println("All cases beside each other: " + Path.of(answers.folder()).resolve(CaseTable.NAME));
    }

    private static void line(String name, List<LimitAnswer> limits, PrintWriter out) {
        long kept = limits.stream().filter(LimitAnswer::holds).count();
        long crossed = limits.stream().filter(LimitAnswer::crossed).count();
        out.printf(
                Locale.ROOT,
                "%-" + NAME + "s%8d%8d%9d%11d%n",
                TextBlock.printable(name),
                limits.size(),
                kept,
                crossed,
                limits.size() - kept - crossed);
    }

    /** The limit with the smallest margin as a part of its allowed value, crossed ones first, then those not sure. */
    private static Optional<LimitAnswer> worst(List<LimitAnswer> limits) {
        return limits.stream()
                .filter(limit -> limit.margin().isPresent())
                .min(Comparator.comparing((LimitAnswer limit) -> !limit.crossed())
                        .thenComparing(LimitAnswer::holds)
                        .thenComparing(
                                limit -> limit.margin().orElseThrow() / Math.max(1e-9, Math.abs(limit.allowed()))));
    }

    private static String words(LimitAnswer limit) {
        return limit.name() + ", at " + limit.station() + ", "
                + AnswerText.number(limit.worst().orElseThrow()) + " " + limit.unit() + ", allowed "
                + AnswerText.number(limit.allowed()) + " " + limit.unit() + " (" + limit.outcome() + ")";
    }
}
