package org.headfall.cli.answer;

import java.io.PrintWriter;
import java.util.List;
import java.util.stream.Collectors;
import org.headfall.scenarios.sweep.document.Aim;
import org.headfall.scenarios.sweep.results.Choices;
import org.headfall.scenarios.sweep.results.Numbers;
import org.headfall.scenarios.sweep.results.SweepFindings;
import org.headfall.scenarios.sweep.results.SweepSentences;
import org.headfall.scenarios.sweep.results.SweepTable;

/** Answers of a sweep as lines of text, what is asked first. */
public final class SweepAnswerText {

    private static final int BEST = 3;

    private final SweepTable table;
    private final SweepFindings findings;
    private final TextBlock out;

    private SweepAnswerText(SweepTable table, PrintWriter out) {
        this.table = table;
        this.out = new TextBlock(out);
        findings = SweepFindings.of(table);
    }

    /**
     * Writes the answers.
     *
     * @param table the runs
     * @param out receives the lines
     */
    public static void write(SweepTable table, PrintWriter out) {
        new SweepAnswerText(table, out).write();
    }

    private void write() {
        SweepSentences sentences = new SweepSentences(findings);
        sentences.best().ifPresent(out::message);
        if (findings.choices().isEmpty()) {
            table.sweep().questions().ranking().ifPresent(this::bestRuns);
        }
        sentences.likelihoods().forEach(out::message);
        sentences.dependences().forEach(out::message);
        int failed = table.failures().count();
        out.message(table.finished() + " of " + table.runs().size() + " runs have figures"
                + (failed == 0 ? "." : ", " + failed + " failed."));
    }

    /** The first few with all values that they were given. */
    private void bestRuns(Aim aim) {
        List<Integer> ranked = findings.answers().ranked();
        ranked.stream()
                .limit(BEST)
                .forEach(place -> out.item("run " + (place + 1) + ": "
                        + Numbers.words(table.figure(aim.figure())[place]) + " with "
                        + table.runs().get(place).entrySet().stream()
                                .map(input -> input.getKey().name() + " "
                                        + Choices.inSentence(input.getKey(), input.getValue()))
                                .collect(Collectors.joining(", "))));
    }
}
