package org.headfall.cli.answer;

import java.io.PrintWriter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.headfall.scenarios.sweep.document.Aim;
import org.headfall.scenarios.sweep.results.Influence;
import org.headfall.scenarios.sweep.results.Likelihood;
import org.headfall.scenarios.sweep.results.SweepAnswers;
import org.headfall.scenarios.sweep.results.SweepTable;
import org.headfall.scenarios.sweep.results.Unranked;

/** Answers of a sweep as lines of text, what is asked first. */
public final class SweepAnswerText {

    private static final int BEST = 3;
    private static final int PER_CENT = 100;

    private final SweepTable table;
    private final SweepAnswers answers;
    private final TextBlock out;

    private SweepAnswerText(SweepTable table, PrintWriter out) {
        this.table = table;
        this.out = new TextBlock(out);
        answers = new SweepAnswers(table);
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
        table.sweep().questions().ranking().ifPresent(this::best);
        if (!answers.limitsOfTheBest().isEmpty()) {
            out.message(answers.limitsOfTheBest());
        }
        for (Likelihood likelihood : answers.likelihoods()) {
            out.message(line(likelihood));
        }
        answers.influences().stream()
                .collect(Collectors.groupingBy(Influence::figure, LinkedHashMap::new, Collectors.toList()))
                .forEach(this::mostInfluential);
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
                                        + input.getValue().text())
                                .collect(Collectors.joining(", ")))));
        if (answers.sharingTheBest() > 1) {
            out.item(answers.sharingTheBest() + " runs share the best value; other figures have to decide among them");
        }
    }

    private static String line(Likelihood likelihood) {
        String choice = likelihood.choice().isEmpty() ? "" : " with " + likelihood.choice();
        String words = likelihood.words().isEmpty() ? "" : likelihood.words() + ", ";
        if (likelihood.share().of() == 0) {
            return likelihood.what() + choice + ": no run says";
        }
        return String.format(
                Locale.ROOT,
                "%s%s: %s%.0f %% (%d of %d runs%s)",
                likelihood.what(),
                choice,
                words,
                PER_CENT * likelihood.share().value(),
                likelihood.share().count(),
                likelihood.share().of(),
                likelihood.sampled()
                        ? String.format(
                                Locale.ROOT,
                                "; 95 %% between %.0f and %.0f %%",
                                PER_CENT * likelihood.share().low(),
                                PER_CENT * likelihood.share().high())
                        : "");
    }

    private void mostInfluential(String figure, List<Influence> influences) {
        Influence first = influences.get(0);
        Optional<Unranked> unranked = answers.unranked(figure);
        if (Double.isNaN(first.swing().length())) {
            unranked.ifPresent(left -> out.message(figure + ": no influence was ranked. " + left.words()));
            return;
        }
        boolean ordered = first.variable().numeric();
        out.message(String.format(
                Locale.ROOT,
                "%s%s depends most on %s: %.4g %s, %.4g %s%s",
                unranked.isEmpty() ? "" : "Among what was ranked, ",
                table.sweep().figure(figure).heading(),
                first.variable().name(),
                first.swing().low(),
                ordered ? "where it is low" : "with one of its values",
                first.swing().high(),
                ordered ? "where it is high" : "with another",
                unranked.map(left -> ". " + left.words()).orElse("")));
    }
}
