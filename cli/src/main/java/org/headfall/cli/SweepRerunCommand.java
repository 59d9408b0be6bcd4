package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.AnswerText;
import org.headfall.cli.answer.RunAnswer;
import org.headfall.cli.answer.TextBlock;
import org.headfall.cli.progress.Progress;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.run.ScenarioRun;
import org.headfall.scenarios.run.StandardOutputs;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.results.ScenarioOfRun;
import org.headfall.scenarios.sweep.work.RecordedSweep;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Gives one run of a sweep back as a scenario with its full results. */
@Command(
        name = "rerun",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description =
                "Writes one run of a sweep as a scenario of its own into run-RUN in the folder of the results, runs it"
                        + " with all results and the report, and makes it again as the sweep did: are its figures those"
                        + " in the store, to the last digit? Exit code 1 if one differs by more than rounding.",
        footerHeading = "%nExample:%n",
        footer = {"  headfall sweep rerun my-field 17"})
final class SweepRerunCommand implements Callable<Integer> {

    @Mixin
    private final SweepArgument argument = new SweepArgument();

    @Parameters(index = "1", paramLabel = "RUN", description = "Number of the run.")
    private int run;

    @Mixin
    private final ThreadsOption threads = new ThreadsOption();

    @Option(names = "--overwrite", description = "Replace the results of an earlier rerun of this run.")
    private boolean overwrite;

    @Option(names = "--quiet", description = "Show no progress and no summary, only figures that differ.")
    private boolean quiet;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    @Override
    public Integer call() throws InputException, IOException {
        Path folder = argument.folder().resolve("run-" + run);
        SweepDocument sweep = sweep();
        Path results = folder.resolve("results").resolve("scenario");
        if (!overwrite && Files.exists(results)) {
            throw new FileAlreadyExistsException(
                    results.toString(),
                    null,
                    "holds an earlier rerun of this run, which is kept; --overwrite replaces it");
        }
        ScenarioReading reading = ScenarioReader.read(scenario(sweep, folder), FileReach.FOLDER_OF_DOCUMENT);
        RunPlan plan = RunPlanner.plan(reading, ProgramVersion.text(), threads.threads());
        FinishedRun finished;
        try (Progress progress = quiet
                ? Progress.SILENT
                : Terminal.ofProcess().progress(spec.commandLine().getErr())) {
            finished = new ScenarioRun(
                            plan, StandardOutputs.all(reading.folder().usedFiles()), progress::reached)
                    .into(results, overwrite);
        }
        if (!quiet) {
            AnswerText.write(
                    RunAnswer.of(finished, results),
                    spec.commandLine().getOut(),
                    Terminal.ofProcess().ansi());
        }
        PrintWriter out = spec.commandLine().getOut();
        Optional<RerunFigures> figures = RerunFigures.compare(sweep, run, finished, argument.folder());
        if (figures.isPresent()) {
            return figures.get().show(quiet, out).code();
        }
        if (!quiet) {
            new TextBlock(out)
                    .sentence("Run " + run + " is not recorded yet, so there are no figures to compare with.");
        }
        return ExitCode.DONE.code();
    }

    private SweepDocument sweep() throws InputException, IOException {
        SweepDocument sweep = argument.read();
        RecordedSweep.requireUnchanged(
                sweep,
                argument.document(),
                argument.folder(),
                ProgramVersion.text(),
                "run " + run + " as it was recorded cannot be made again");
        return sweep;
    }

    private Path scenario(SweepDocument sweep, Path folder) throws IOException {
        try {
            return ScenarioOfRun.write(sweep, run, folder);
        } catch (IllegalArgumentException noSuchRun) {
            throw new ParameterException(spec.commandLine(), String.valueOf(noSuchRun.getMessage()));
        }
    }
}
