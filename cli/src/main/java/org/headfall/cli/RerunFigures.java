package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.headfall.cli.answer.TextBlock;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.store.StoredRun;
import org.headfall.scenarios.sweep.store.SweepStore;
import org.headfall.scenarios.sweep.work.RepeatedRun;

/**
 * Figures of a recorded run of a sweep beside those of the same run made again.
 *
 * @param recorded the run in the store
 * @param repeated the run made again in the way of its sweep
 * @param inFull figures of the run with all results that differ from those in the store in six digits, with both values
 */
record RerunFigures(StoredRun recorded, RepeatedRun repeated, List<String> inFull) {

    /** Copies the list. */
    RerunFigures {
        inFull = List.copyOf(inFull);
    }

    /**
     * Makes a run again in the way of its sweep.
     *
     * @param sweep the sweep
     * @param number number of the run
     * @param finished the run as a scenario of its own, with all results
     * @param folder folder of the results of the sweep
     * @return nothing if the run is not recorded
     * @throws IOException if the store cannot be read
     */
    static Optional<RerunFigures> compare(SweepDocument sweep, int number, FinishedRun finished, Path folder)
            throws IOException {
        Path file = folder.resolve("sweep.sqlite");
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        try (SweepStore store = SweepStore.read(file)) {
            return store.run(number)
                    .filter(run -> run.status() != StoredRun.Status.PLANNED)
                    .map(recorded -> new RerunFigures(
                            recorded,
                            RepeatedRun.of(sweep, recorded, ProgramVersion.text()),
                            inFull(sweep, recorded, finished)));
        }
    }

    /** The run with all results may be answered in another way, as exact as that of the sweep but not digit by digit. */
    private static List<String> inFull(SweepDocument sweep, StoredRun recorded, FinishedRun finished) {
        List<String> lines = new ArrayList<>();
        if (recorded.status() != StoredRun.Status.FINISHED) {
            return lines;
        }
        for (int i = 0; i < sweep.figures().size(); i++) {
            KeptFigure figure = sweep.figures().get(i);
            double kept = recorded.figures()[i];
            double found = figure.valueIn(finished);
            if (!figure.isOfSeries() && !words(kept).equals(words(found))) {
                lines.add(figure.heading() + ": " + words(kept) + " in the store, " + words(found) + " in full");
            }
        }
        return lines;
    }

    private static String words(double number) {
        return Double.isNaN(number) ? "none" : String.format(Locale.ROOT, "%.6g", number);
    }

    /**
     * Writes what was found.
     *
     * @param quiet whether only what differs is wanted
     * @param to receives it
     * @return {@link ExitCode#INPUT} if a figure differs by more than rounding
     */
    ExitCode show(boolean quiet, PrintWriter to) {
        TextBlock out = new TextBlock(to);
        if (!repeated.differences().isEmpty()) {
            out.sentence("Not the same: run " + recorded.number()
                    + ", made again as the sweep made it, has other figures than the store.");
            repeated.differences().forEach(out::item);
            if (!recorded.program().equals(ProgramVersion.text())) {
                out.sentence("It was made by " + recorded.program() + ", and now by " + ProgramVersion.text() + ".");
            }
            return ExitCode.INPUT;
        }
        if (!quiet) {
            out.sentence(same());
            if (!inFull.isEmpty()) {
                out.sentence(
                        "With all results it is computed in another way, which gives, within the accuracy of both:");
                inFull.forEach(out::item);
            }
        }
        return ExitCode.DONE;
    }

    private String same() {
        if (recorded.status() == StoredRun.Status.FAILED) {
            return "Run " + recorded.number() + " fails for the same reason as in the store.";
        }
        String compared = "run " + recorded.number() + ", made again as the sweep made it (" + recorded.way()
                + "), has the " + repeated.figures() + " figures of the store";
        return repeated.rounded() == 0
                ? "The same to the last digit: " + compared + "."
                : "The same but for rounding: " + compared + ", of which " + repeated.rounded()
                        + " differ in their last digits, by 1e-9 of themselves or of their unit at most, as another"
                        + " processor, Java or build of headfall makes them.";
    }
}
