package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.AnswerJson;
import org.headfall.cli.answer.AnswerText;
import org.headfall.cli.answer.RunAnswer;
import org.headfall.cli.answer.Verdict;
import org.headfall.cli.progress.Progress;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.run.ScenarioRun;
import org.headfall.scenarios.run.StandardOutputs;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Runs a scenario, writes its results folder and says what came of it. */
@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        description = "Runs a scenario and writes a folder with heads, tables, maps and a report.",
        footerHeading = "%nExamples:%n",
        footer = {
            "  headfall run my-field",
            "  headfall run my-field/dry-years.yaml --output dry --overwrite",
            "  headfall run my-field --quiet --json --fail-on-limit > answer.json"
        })
final class RunCommand implements Callable<Integer> {

    private final Terminal terminal;

    @Mixin
    private final ScenarioArgument argument = new ScenarioArgument();

    @Mixin
    private final JsonOption json = new JsonOption();

    @Option(
            names = "--output",
            paramLabel = "DIR",
            description = "Folder for the results; otherwise results/NAME beside the scenario document NAME.yaml.")
    private @Nullable Path output;

    @Option(names = "--overwrite", description = "Replace results that are there, once the new ones are complete.")
    private boolean overwrite;

    @Mixin
    private final ThreadsOption threads = new ThreadsOption();

    @Option(
            names = "--doubts",
            description = "Also run on cells twice as wide and with far boundaries farther out, to find the errors of"
                    + " grid and boundary; takes up to two and a half times the work.")
    private boolean doubts;

    @Option(names = "--quiet", description = "Show no progress and no summary, only what goes wrong.")
    private boolean quiet;

    @Option(names = "--fail-on-limit", description = "Answer exit code 3 if a limit is crossed.")
    private boolean failOnLimit;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    /**
     * Makes the command.
     *
     * @param terminal what is at the other end of the streams
     */
    RunCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException, IOException {
        Path target = output == null ? argument.resultsFolder() : output;
        RunAnswer answer = RunAnswer.of(run(target), target);
        show(answer);
        boolean fails = failOnLimit && answer.verdict() == Verdict.CROSSED;
        return (fails ? ExitCode.LIMIT_CROSSED : ExitCode.DONE).code();
    }

    @SuppressWarnings("try") // the notice needs only to be closed
    private FinishedRun run(Path target) throws InputException, IOException {
        ScenarioReading reading = argument.read();
        RunPlan planned = RunPlanner.plan(reading, ProgramVersion.text(), threads.threads());
        RunPlan plan = doubts ? planned.withDoubts() : planned;
        PrintWriter err = spec.commandLine().getErr();
        try (Progress progress = quiet ? Progress.SILENT : terminal.progress(err);
                StopNotice notice = StopNotice.whileWriting(target, err)) {
            return new ScenarioRun(plan, StandardOutputs.all(reading.folder().usedFiles()), progress::reached)
                    .into(target, overwrite);
        }
    }

    private void show(RunAnswer answer) {
        PrintWriter out = spec.commandLine().getOut();
        if (json.wanted()) {
            out.println(AnswerJson.of(answer));
        } else if (!quiet) {
            AnswerText.write(answer, out, terminal.ansi());
        }
    }
}
