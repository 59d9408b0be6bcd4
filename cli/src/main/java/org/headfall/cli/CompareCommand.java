package org.headfall.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.ComparisonText;
import org.headfall.cli.answer.TextBlock;
import org.headfall.scenarios.comparison.ComparisonOutputs;
import org.headfall.scenarios.comparison.RunComparison;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.QuantityException;
import org.headfall.scenarios.quantity.QuantityParser;
import org.headfall.scenarios.results.FileChanges;
import org.headfall.scenarios.results.ResultsFolder;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Puts two finished runs side by side. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Says how much lower heads are in a second run than in a first, where, and what that means for"
                + " bores and springs.",
        footerHeading = "%nExample:%n",
        footer = {
            "  headfall compare my-field/results/existing my-field/results/proposal",
            "  headfall compare a b --lower-by \"0.2 m\" --lower-by \"2 m\" --output a-and-b"
        })
final class CompareCommand implements Callable<Integer> {

    @Parameters(index = "0", paramLabel = "FIRST", description = "Results folder of the run compared with.")
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private Path first;

    @Parameters(index = "1", paramLabel = "SECOND", description = "Results folder of the other run.")
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private Path second;

    @Option(
            names = "--lower-by",
            paramLabel = "LENGTH",
            description = "From how much lower head on a place counts as affected; may be given several times;"
                    + " otherwise 0.5 m, 1 m and 5 m.")
    private List<String> thresholds = List.of("0.5 m", "1 m", "5 m");

    @Option(
            names = "--output",
            paramLabel = "DIR",
            description = "Folder for tables, maps and areas; otherwise comparison in the current folder.")
    private Path output = Path.of("comparison");

    @Option(names = "--overwrite", description = "Replace an older comparison, once the new one is complete.")
    private boolean overwrite;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        List<Double> metres =
                thresholds.stream().map(this::metres).distinct().sorted().toList();
        ResultsFolder.requireFree(output, overwrite, ComparisonOutputs.FILES);
        RunComparison comparison = RunComparison.of(first, second);
        for (Path run : List.of(first, second)) {
            ChangedFiles.warn(FileChanges.atAGlance(run), spec.commandLine().getErr());
        }
        new ComparisonOutputs(comparison, metres).into(output, overwrite);
        new ComparisonText(comparison, metres, new TextBlock(spec.commandLine().getOut())).write();
        spec.commandLine().getOut().println("Written: " + output);
        return ExitCode.DONE.code();
    }

    /** As much as a limit of drawdown may allow (m). */
    private static final double LARGEST_LOWERING = 10_000;

    private double metres(String text) {
        try {
            double metres = QuantityParser.parse(text, Dimension.LENGTH).value();
            if (metres > 0 && metres <= LARGEST_LOWERING) {
                return metres;
            }
        } catch (QuantityException e) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--lower-by must be a length with its unit, such as \"0.5 m\", found " + text,
                    e);
        }
        throw new ParameterException(
                spec.commandLine(), "--lower-by must be more than 0 m and at most 10000 m, found " + text);
    }
}
