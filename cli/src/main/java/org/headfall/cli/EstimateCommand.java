package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.AnswerJson;
import org.headfall.cli.answer.AnswerText;
import org.headfall.cli.answer.RunAnswer;
import org.headfall.cli.progress.Progress;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.WrittenFiles;
import org.headfall.scenarios.run.EarlierResponses;
import org.headfall.scenarios.run.RunFromResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.run.ScenarioRun;
import org.headfall.scenarios.run.StandardOutputs;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Answers a scenario with other rates from the unit responses of a run on the same aquifer and grid. */
@Command(
        name = "estimate",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description =
                "Answers a scenario in a second or two from the unit responses of an earlier run on the same aquifer"
                        + " and grid: other rates, operations and limits, at bores, springs and protected points only. If the"
                        + " accuracy cannot be promised the scenario is run in full, and the answer says so.",
        footerHeading = "%nExamples:%n",
        footer = {
            "  headfall estimate my-field",
            "  headfall estimate my-field/less.yaml --responses my-field/results/scenario"
        })
final class EstimateCommand implements Callable<Integer> {

    private final Terminal terminal;

    @Mixin
    private final ScenarioArgument argument = new ScenarioArgument();

    @Mixin
    private final JsonOption json = new JsonOption();

    @Option(
            names = "--responses",
            paramLabel = "DIR",
            description = "Results of the earlier run; otherwise results/NAME beside the scenario document NAME.yaml.")
    private @Nullable Path responses;

    @Option(
            names = "--output",
            paramLabel = "DIR",
            description =
                    "Folder for the tables; otherwise results/NAME-estimate beside the scenario document NAME.yaml.")
    private @Nullable Path output;

    @Option(names = "--overwrite", description = "Replace results that are there, once the new ones are complete.")
    private boolean overwrite;

    @Option(names = "--quiet", description = "Show no summary, only what goes wrong.")
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
    EstimateCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException, IOException {
        Path target = output == null ? argument.resultsFolder("-estimate") : output;
        Path earlier = responses == null ? argument.resultsFolder() : responses;
        if (target.toAbsolutePath().normalize().equals(earlier.toAbsolutePath().normalize())) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--output must not be the folder of the run that is answered from, found " + target);
        }
        ResultsFolder.requireFree(target, overwrite, WrittenFiles.OF_A_RUN);
        EarlierResponses stored = new EarlierResponses(earlier);
        ScenarioReading reading = argument.read();
        RunPlan plan = RunPlanner.plan(
                reading, ProgramVersion.text(), Runtime.getRuntime().availableProcessors());
        RunFromResponses estimate = new RunFromResponses(plan, stored);
        ChangedFiles.warn(stored.changes(), spec.commandLine().getErr());
        RunAnswer answer = RunAnswer.of(run(reading, plan, estimate, target), target, estimate.reasonToSimulate());
        show(answer);
        return (failOnLimit
                        ? LimitFailure.of(List.of(answer), spec.commandLine().getErr())
                        : ExitCode.DONE)
                .code();
    }

    @SuppressWarnings("try") // the notice needs only to be closed
    private FinishedRun run(ScenarioReading reading, RunPlan plan, RunFromResponses estimate, Path target)
            throws IOException {
        Optional<String> reason = estimate.reasonToSimulate();
        if (reason.isEmpty()) {
            return estimate.into(target, overwrite);
        }
        PrintWriter err = spec.commandLine().getErr();
        terminal.message(err, "headfall: simulated in full, unit responses do not answer it: " + reason.get());
        try (Progress progress = quiet ? Progress.SILENT : terminal.progress(err);
                StopNotice notice = StopNotice.whileWriting(target, terminal, err)) {
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
