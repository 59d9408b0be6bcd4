package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.AnswerJson;
import org.headfall.cli.answer.AnswerText;
import org.headfall.cli.answer.CaseAnswers;
import org.headfall.cli.answer.CaseText;
import org.headfall.cli.answer.RunAnswer;
import org.headfall.cli.progress.Progress;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.RunOutput;
import org.headfall.scenarios.results.WrittenFiles;
import org.headfall.scenarios.run.CasePlan;
import org.headfall.scenarios.run.CaseRuns;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.run.RunProgress;
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
        addMethodSubcommands = false,
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
        ResultsFolder.requireFree(target, overwrite, WrittenFiles.OF_A_RUN_OR_CASES);
        ScenarioReading reading = argument.read();
        boolean oneCase = reading.orThrow().cases().isEmpty();
        Collection<RunAnswer> answers = oneCase ? List.of(inOne(reading, target)) : inCases(reading, target);
        return (failOnLimit ? LimitFailure.of(answers, spec.commandLine().getErr()) : ExitCode.DONE).code();
    }

    private RunAnswer inOne(ScenarioReading reading, Path target) throws InputException, IOException {
        RunPlan plan = planned(RunPlanner.plan(reading, ProgramVersion.text(), threads.threads()));
        remark(reading);
        RunAnswer answer = RunAnswer.of(
                written(target, progress -> new ScenarioRun(plan, outputs(reading), progress).into(target, overwrite)),
                target);
        show(answer);
        return answer;
    }

    private Collection<RunAnswer> inCases(ScenarioReading reading, Path target) throws InputException, IOException {
        List<CasePlan> cases = RunPlanner.cases(reading, ProgramVersion.text(), threads.threads()).stream()
                .map(one -> new CasePlan(one.name(), planned(one.plan())))
                .toList();
        remark(reading);
        Map<String, FinishedRun> runs =
                written(target, progress -> new CaseRuns(cases, outputs(reading), progress).into(target, overwrite));
        Map<String, RunAnswer> answers = new LinkedHashMap<>();
        for (CasePlan one : cases) {
            FinishedRun run = Objects.requireNonNull(runs.get(one.name()));
            answers.put(one.name(), RunAnswer.of(run, target.resolve(one.folder())));
        }
        show(new CaseAnswers(answers, target.toString()));
        return answers.values();
    }

    /** Some remarks come only from what the document is on cells, so this follows planning. */
    private void remark(ScenarioReading reading) {
        if (!quiet) {
            PlanningOptions.remark(reading, spec.commandLine().getErr());
        }
    }

    private RunPlan planned(RunPlan plan) {
        return doubts ? plan.withDoubts() : plan;
    }

    private static List<RunOutput> outputs(ScenarioReading reading) throws IOException {
        return StandardOutputs.all(reading.folder().usedFiles());
    }

    /** Something that writes results and tells how far it has come. */
    @FunctionalInterface
    private interface Writing<T> {
        T write(RunProgress progress) throws IOException;
    }

    @SuppressWarnings("try") // the notice needs only to be closed
    private <T> T written(Path target, Writing<T> writing) throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        try (Progress progress = quiet ? Progress.SILENT : terminal.progress(err);
                StopNotice notice = StopNotice.whileWriting(target, terminal, err)) {
            return writing.write(progress::reached);
        }
    }

    private void show(CaseAnswers answers) {
        PrintWriter out = spec.commandLine().getOut();
        if (json.wanted()) {
            out.println(AnswerJson.of(answers));
        } else if (!quiet) {
            CaseText.write(answers, out, terminal.ansi());
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
