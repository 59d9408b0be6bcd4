package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.headfall.cli.progress.Progress;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.results.CaseFolders;
import org.headfall.scenarios.run.Rerun;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Proves a result: runs it again from the inputs in its folder. */
@Command(
        name = "rerun",
        mixinStandardHelpOptions = true,
        description =
                "Runs a result again from the inputs kept in its folder, and says whether the same numbers come"
                        + " of it; of a run with cases, each of them. Changes nothing in the folder. Exit code 1 if a number differs.",
        footerHeading = "%nExample:%n",
        footer = {"  headfall rerun my-field/results/scenario"})
final class RerunCommand implements Callable<Integer> {

    private final Terminal terminal;

    @Parameters(paramLabel = "RESULTS", description = "Folder that a run has written.")
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private Path results;

    @Mixin
    private final ThreadsOption threads = new ThreadsOption();

    @Option(names = "--quiet", description = "Show no progress.")
    private boolean quiet;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    RerunCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException, IOException {
        List<Path> cases = CaseFolders.in(results);
        if (cases.isEmpty()) {
            return runAgain(results).code();
        }
        boolean identical = true;
        for (Path one : cases) {
            spec.commandLine().getOut().println("Case " + one.getFileName() + ":");
            identical &= runAgain(one) == ExitCode.DONE;
        }
        return (identical ? ExitCode.DONE : ExitCode.INPUT).code();
    }

    private ExitCode runAgain(Path folder) throws InputException, IOException {
        Rerun rerun = new Rerun(folder);
        Rerun.Outcome outcome;
        try (Progress progress =
                quiet ? Progress.SILENT : terminal.progress(spec.commandLine().getErr())) {
            outcome = rerun.run(ProgramVersion.text(), threads.threads(), progress::reached);
        }
        PrintWriter out = spec.commandLine().getOut();
        if (!rerun.madeBy().equals(ProgramVersion.text())) {
            out.println("Made by " + rerun.madeBy() + ", run again by " + ProgramVersion.text() + ".");
        }
        if (outcome instanceof Rerun.Identical identical) {
            out.printf(Locale.ROOT, "Identical: %d numbers of series and maps are the same.%n", identical.numbers());
            out.println("""
                    Compared: all series in bores.nc, and heads.nc on the report dates. Tables such as
                    limits.csv follow from these; the tables in the folder were not read.""");
            return ExitCode.DONE;
        }
        Rerun.Differs differs = (Rerun.Differs) outcome;
        out.println("Not identical. First difference: " + differs.what() + " is " + differs.before()
                + " in the results and " + differs.now() + " now.");
        return ExitCode.INPUT;
    }
}
