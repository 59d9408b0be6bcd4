package org.headfall.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.TextBlock;
import org.headfall.cli.progress.Progress;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.rerun.FileComparison;
import org.headfall.scenarios.rerun.FolderProof;
import org.headfall.scenarios.rerun.Rerun;
import org.headfall.scenarios.results.FileChanges;
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
        addMethodSubcommands = false,
        description =
                "Proves a result: names files that were changed since the run or are missing, runs it again from the"
                        + " inputs kept in its folder, and says which values of which file differ, beyond rounding; of a run with cases, all of"
                        + " them. Changes nothing in the folder. Exit code 1 if a file was changed or a value differs.",
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
        Rerun rerun = new Rerun(results);
        TextBlock block = new TextBlock(spec.commandLine().getOut());
        boolean changed = showChanges(rerun.changes(), block);
        List<FolderProof> proofs;
        try (Progress progress =
                quiet ? Progress.SILENT : terminal.progress(spec.commandLine().getErr())) {
            proofs = rerun.run(ProgramVersion.text(), threads.threads(), progress::reached);
        }
        if (!rerun.madeBy().equals(ProgramVersion.text())) {
            block.sentence("Made by " + rerun.madeBy() + ", run again by " + ProgramVersion.text() + ".");
        }
        boolean same = proofs.stream().allMatch(proof -> proof.different().isEmpty());
        if (same) {
            showSame(proofs, changed, block);
        } else {
            showDifferent(proofs, block);
        }
        block.sentence("Compared: every value of NetCDF files on all dates, of tables, maps, summaries and kept inputs."
                + " report.html is known by its hash alone; headfall report writes it again from the other files.");
        return (same && !changed ? ExitCode.DONE : ExitCode.INPUT).code();
    }

    /** Names what was done to files since the run; a file that was added is no fault of the results. */
    private static boolean showChanges(List<FileChanges> folders, TextBlock block) {
        boolean changed = false;
        for (FileChanges changes : folders) {
            boolean here = !changes.changed().isEmpty() || !changes.missing().isEmpty();
            changed |= here;
            if (here || !changes.added().isEmpty()) {
                block.sentence("Files in " + changes.folder() + " since the run:");
                ChangedFiles.list(block, changes);
            }
        }
        return changed;
    }

    private static void showSame(List<FolderProof> proofs, boolean changed, TextBlock block) {
        long values = proofs.stream().mapToLong(FolderProof::values).sum();
        long count = proofs.stream().mapToLong(proof -> proof.files().size()).sum();
        long rounded = proofs.stream().mapToLong(FolderProof::rounded).sum();
        String counts = String.format(Locale.ROOT, "%,d values in %d files", values, count);
        String files = changed ? "but not the same files: see above." : "and no file was changed since the run.";
        block.sentence(
                rounded == 0
                        ? (changed ? "The same values: " : "Identical: ") + counts + ", " + files
                        : String.format(
                                Locale.ROOT,
                                "The same but for rounding: %s, of which %,d differ in their last digits, by 1e-9 of"
                                        + " themselves or of their unit at most, as another processor, Java or build of"
                                        + " headfall makes them, %s",
                                counts,
                                rounded,
                                files));
    }

    private static void showDifferent(List<FolderProof> proofs, TextBlock block) {
        long files = proofs.stream().mapToLong(proof -> proof.files().size()).sum();
        long different =
                proofs.stream().mapToLong(proof -> proof.different().size()).sum();
        block.sentence("Not identical: " + different + " of " + files + " files hold other values than the run gives.");
        for (FolderProof proof : proofs) {
            if (!proof.different().isEmpty() && proofs.size() > 1) {
                block.sentence("In " + proof.folder() + ":");
            }
            proof.different().forEach(file -> block.item(words(file)));
            if (!proof.otherWay().isEmpty()) {
                block.sentence(proof.otherWay());
            }
        }
    }

    private static String words(FileComparison file) {
        String first = file.first().orElseThrow();
        return file.values() == 0
                ? file.file() + ": " + first
                : String.format(
                        Locale.ROOT,
                        "%s: %,d of %,d values differ, the first at %s",
                        file.file(),
                        file.differing(),
                        file.values(),
                        first);
    }
}
