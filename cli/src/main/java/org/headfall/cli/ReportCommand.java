package org.headfall.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.headfall.scenarios.report.ReportWriter;
import org.headfall.scenarios.report.RunReport;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.picture.ReportPictures;
import org.headfall.scenarios.results.DischargesFile;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResponsesFile;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.ResultsReader;
import org.headfall.scenarios.results.SummaryFile;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes the report of a finished run again, from its folder alone. */
@Command(
        name = "report",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Writes the report of a finished run again, from its results folder.",
        footerHeading = "%nExample:%n",
        footer = {
            "  headfall report my-field/results/scenario",
            "  headfall report my-field/results/scenario --pictures slides"
        })
final class ReportCommand implements Callable<Integer> {

    /** Files that the page takes besides those that any run is read from. */
    private static final List<String> READ = List.of(DischargesFile.NAME, ResponsesFile.NAME);

    @Parameters(paramLabel = "RESULTS", description = "Folder that a run has written.")
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private Path results;

    @Option(
            names = "--output",
            paramLabel = "FILE",
            description = "File to write; otherwise report.html in that folder, in place of the one there.")
    private @Nullable Path output;

    @Option(
            names = "--pictures",
            paramLabel = "DIR",
            description = "Write map, section, hydrographs and interference into DIR as SVG and PNG, and no page.")
    private @Nullable Path pictures;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        Path file = output == null ? reportOfTheRun() : output;
        requirePage(file);
        FinishedRun run = new ResultsReader().read(results);
        ChangedFiles.check(results, READ, spec.commandLine().getErr());
        if (pictures != null) {
            return writePictures(run, pictures);
        }
        ReportContent content = RunReport.of(run, results);
        try {
            ReportWriter.write(content, file.toAbsolutePath());
        } catch (IOException failure) {
            throw ResultsFolder.explained(failure, file);
        }
        if (Files.exists(reportOfTheRun()) && Files.isSameFile(file, reportOfTheRun())) {
            noteInSummary();
        }
        spec.commandLine().getOut().println("Written: " + file);
        return ExitCode.DONE.code();
    }

    private Path reportOfTheRun() {
        return results.resolve(ReportWriter.NAME);
    }

    /** However the folder was named, its own page is known to it again. */
    private void noteInSummary() throws IOException {
        try {
            new SummaryFile().writtenAgain(results, ReportWriter.NAME);
        } catch (IOException failure) {
            throw ResultsFolder.explained(failure, results.resolve(SummaryFile.NAME));
        }
    }

    /** Only a page is replaced: a wrong name must not cost anybody a file, or a device. */
    private void requirePage(Path file) {
        boolean page = Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                && String.valueOf(file.getFileName()).endsWith(".html");
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS) && !page) {
            throw new ParameterException(
                    spec.commandLine(), "--output must be a new file or an .html file to replace, found " + file);
        }
    }

    private int writePictures(FinishedRun run, Path folder) throws IOException {
        System.setProperty("java.awt.headless", "true");
        List<String> names;
        try {
            names = ReportPictures.write(RunReport.of(run, results), folder);
        } catch (IOException failure) {
            throw ResultsFolder.explained(failure, folder);
        }
        spec.commandLine()
                .getOut()
                .println("Written: " + names.size() + " pictures, each as SVG and PNG, to " + folder);
        return ExitCode.DONE.code();
    }
}
