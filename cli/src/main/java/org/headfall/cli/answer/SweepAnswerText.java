package org.headfall.cli.answer;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.headfall.scenarios.sweep.document.Aim;
import org.headfall.scenarios.sweep.results.Choices;
import org.headfall.scenarios.sweep.results.SweepAnswers;
import org.headfall.scenarios.sweep.results.SweepFindings;
import org.headfall.scenarios.sweep.results.SweepSentences;
import org.headfall.scenarios.sweep.results.SweepTable;

/** Answers of a sweep as lines of text, what is asked first. */
public final class SweepAnswerText {

    private static final int BEST = 3;

    private final SweepTable table;
    private final SweepAnswers answers;
    private final SweepFindings findings;
    private final TextBlock out;

    private SweepAnswerText(SweepTable table, PrintWriter out) {
        this.table = table;
        this.out = new TextBlock(out);
        findings = SweepFindings.of(table);
        answers = findings.answers();
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
        if (findings.choices().isPresent()) {
            findings.choices().get().sentence().ifPresent(out::message);
        } else {
            table.sweep().questions().ranking().ifPresent(this::best);
        }
        SweepSentences sentences = new SweepSentences(findings);
        sentences.likelihoods().forEach(out::message);
        sentences.dependences().forEach(out::message);
        int failed = table.failures().count();
        out.message(table.finished() + " of " + table.runs().size() + " runs have figures"
                + (failed == 0 ? "." : ", " + failed + " failed."));
    }

    private void best(Aim aim) {
        List<Integer> ranked = answers.ranked();
        String unit = table.sweep().figure(aim.figure()).unit();
        out.message((aim.largest() ? "Largest: " : "Smallest: ")
                + aim.figure()
                + (unit.isEmpty() ? ":" : " (" + unit + "):"));
        ranked.stream()
                .limit(BEST)
                .forEach(place -> out.item(String.format(
                        Locale.ROOT,
                        "run %d: %.4g with %s",
                        place + 1,
                        table.figure(aim.figure())[place],
                        table.runs().get(place).entrySet().stream()
                                .map(input -> input.getKey().name() + " "
                                        + Choices.inSentence(input.getKey(), input.getValue()))
                                .collect(Collectors.joining(", ")))));
        if (answers.sharingTheBest() > 1) {
            out.item(answers.sharingTheBest() + " runs share the best value; other figures have to decide among them");
        }
        if (!answers.limitsOfTheBest().isEmpty()) {
            out.message(answers.limitsOfTheBest());
        }
    }
}
