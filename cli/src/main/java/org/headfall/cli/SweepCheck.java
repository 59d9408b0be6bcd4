package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.headfall.cli.answer.AnswerJson;
import org.headfall.cli.answer.TextBlock;
import org.headfall.scenarios.problem.Problem;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.work.CheckedRuns;
import org.headfall.scenarios.sweep.work.SweepForecast;
import org.headfall.scenarios.sweep.work.TimeRange;

/** What there is to say about a sweep that is not made: which runs are no valid scenarios, and what all would take. */
final class SweepCheck {

    private static final double SECONDS = 10;

    private final SweepForecast forecast;
    private final CheckedRuns runs;
    private final Summary summary;

    /**
     * What is printed as JSON.
     *
     * @param memoryMb memory of one run (MB)
     * @param leastSeconds time on all processors, at least
     * @param mostSeconds time on all processors, at most
     */
    private record Summary(
            List<Problem> problems,
            String document,
            String title,
            String base,
            int runs,
            int figures,
            int sharedRuns,
            int runsLookedAt,
            int runsNotValid,
            Map<String, List<Integer>> reasons,
            long memoryMb,
            int threads,
            double leastSeconds,
            double mostSeconds) {}

    private SweepCheck(SweepForecast forecast, CheckedRuns runs, Summary summary) {
        this.forecast = forecast;
        this.runs = runs;
        this.summary = summary;
    }

    /**
     * Checks a sweep whose document and base scenario have no problems.
     *
     * @param document its file
     * @param sweep the sweep
     * @throws IOException if a file cannot be read any more
     */
    static SweepCheck of(Path document, SweepDocument sweep) throws IOException {
        SweepForecast forecast = SweepForecast.of(sweep);
        CheckedRuns runs = CheckedRuns.of(sweep, ProgramVersion.text(), SECONDS);
        int threads = forecast.threads(
                Math.min(Runtime.getRuntime().availableProcessors(), forecast.runs()),
                Runtime.getRuntime().maxMemory());
        TimeRange time = forecast.time(threads);
        Summary summary = new Summary(
                List.of(),
                document.toString(),
                sweep.title(),
                String.valueOf(sweep.base().document().getFileName()),
                forecast.runs(),
                sweep.figures().size(),
                forecast.shared(),
                runs.looked(),
                runs.invalid().count(),
                runs.invalid().byReason(),
                forecast.memoryOfRun() / SweepForecast.MEGABYTE,
                threads,
                time.least(),
                time.most());
        return new SweepCheck(forecast, runs, summary);
    }

    /**
     * Writes the answer.
     *
     * @param json whether it is wanted as JSON
     * @param out receives it
     * @return {@link ExitCode#INPUT} if no run that was looked at is valid, {@link ExitCode#SOME_FAILED} if some are not
     */
    ExitCode show(boolean json, PrintWriter out) {
        if (json) {
            out.println(AnswerJson.of(summary));
        } else {
            show(new TextBlock(out));
        }
        int invalid = runs.invalid().count();
        if (invalid == 0) {
            return ExitCode.DONE;
        }
        return invalid == runs.looked() ? ExitCode.INPUT : ExitCode.SOME_FAILED;
    }

    private void show(TextBlock out) {
        out.message(summary.document() + ": no problem found in it or in " + summary.base() + ".");
        out.message(summary.title() + ": " + summary.runs() + " runs, " + summary.figures() + " figures of each");
        String looked = runs.looked() == runs.all()
                ? "All " + runs.all() + " runs were looked at"
                : "Looked at " + runs.looked() + " of " + runs.all() + " runs, spread evenly, in " + Math.round(SECONDS)
                        + " s";
        int invalid = runs.invalid().count();
        out.message(looked + (invalid == 0 ? ": all are valid scenarios." : ": " + invalid + " would fail."));
        runs.invalid().lines(": ").forEach(out::item);
        if (summary.sharedRuns() > 0) {
            out.message(summary.sharedRuns() + " runs differ from others in rates alone and are answered from unit"
                    + " responses, where these are exact enough.");
        }
        out.message("To make them: " + forecast.memory(summary.threads()) + ", "
                + new TimeRange(summary.leastSeconds(), summary.mostSeconds()).words()
                + " on free processors, by the number of cells and steps. Nothing was started: headfall sweep "
                + summary.document() + " does.");
    }
}
