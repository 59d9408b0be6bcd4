package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.AnswerJson;
import org.headfall.cli.answer.TextBlock;
import org.headfall.cli.progress.Progress;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.scenario.SpacingSpecification;
import org.headfall.scenarios.spacing.SpacingComparison;
import org.headfall.scenarios.spacing.SpacingFiles;
import org.headfall.scenarios.spacing.SpacingResult;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Says how far apart the bores of a field should stand. */
@Command(
        name = "spacing",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Compares layouts of a bore field: yield, lift, interference, pipe and cost over spacing.",
        footerHeading = "%nExample:%n",
        footer = "  headfall spacing my-field")
final class SpacingCommand implements Callable<Integer> {

    private final Terminal terminal;

    @Mixin
    private final PlanningOptions options = new PlanningOptions();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    /**
     * Makes the command.
     *
     * @param terminal what is at the other end of the streams
     */
    SpacingCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException, IOException {
        Path target = options.target("-spacing", SpacingFiles.NAMES);
        ScenarioReading reading = options.read();
        RunPlan plan = options.plan(reading);
        PlanningOptions.remark(reading, spec.commandLine().getErr());
        SpacingSpecification spacing = PlanningSection.require(
                reading, "spacing", reading.orThrow().planning().spacing());
        try (ResultsFolder folder = options.open(target, SpacingFiles.NAMES);
                Progress progress = terminal.progress(spec.commandLine().getErr())) {
            SpacingResult result = SpacingComparison.in(plan, spacing, progress::reached);
            SpacingFiles.write(folder.file(""), plan.description(), result);
            folder.complete();
            show(result, target);
        }
        return ExitCode.DONE.code();
    }

    private record Answer(String folder, double loweredByDocument, List<SpacingResult.Line> economic) {}

    private void show(SpacingResult result, Path target) {
        PrintWriter out = spec.commandLine().getOut();
        if (options.wantsJson()) {
            out.println(AnswerJson.of(new Answer(target.toString(), result.lowered(), result.economic())));
            return;
        }
        TextBlock text = new TextBlock(out);
        text.sentence("Spacing of least cost:");
        result.economic().forEach(line -> text.item(words(result, line)));
        result.remarkOnEnds().ifPresent(text::sentence);
        text.sentence(SpacingResult.WORDS_ON_RATES);
        text.sentence(result.wordsOnDocument());
        text.sentence(result.wordsOnGrid());
        if (!result.repeats().isEmpty()) {
            text.sentence(result.repeats());
        }
        text.sentence("Computed, not approved; prices are those of the document.");
        out.println("Written: " + TextBlock.printable(target.toString()));
    }

    private static String words(SpacingResult result, SpacingResult.Line line) {
        boolean best = result.best().map(line::equals).orElse(false);
        return String.format(
                Locale.ROOT,
                "%s, %d bores, %.0f m apart%s: lift %.1f m, interference %.2f m, pipe %.1f km, %.2f per ML%s",
                line.layout().name().toLowerCase(Locale.ROOT),
                line.bores(),
                line.spacing(),
                result.isAtEnd(line) ? " (the end of the range)" : "",
                line.lift(),
                line.interference(),
                line.pipe() / 1000,
                line.cost(),
                best ? "; least of all" : "");
    }
}
