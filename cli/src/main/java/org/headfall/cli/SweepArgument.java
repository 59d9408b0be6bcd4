package org.headfall.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.SweepReader;
import org.headfall.scenarios.sweep.store.Definition;
import org.headfall.scenarios.sweep.store.SweepStore;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** How the commands of a sweep are told which one and where its results are. */
final class SweepArgument {

    @Spec(Spec.Target.MIXEE)
    @SuppressWarnings("NullAway.Init") // set by picocli before the command is called
    private CommandSpec spec;

    /** Not required for picocli, or the commands below {@code sweep} would have to name it twice. */
    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "SWEEP",
            description = "Sweep document, or a folder with a sweep.yaml in it.")
    private @Nullable Path sweep;

    @Option(
            names = "--output",
            paramLabel = "DIR",
            description = "Folder of the results; otherwise results/NAME beside the sweep document NAME.yaml.")
    private @Nullable Path output;

    @Option(names = "--allow-outside-files", description = "Let the documents name files outside their own folder.")
    private boolean outsideFiles;

    /** The document. */
    Path document() {
        if (sweep == null) {
            throw new ParameterException(spec.commandLine(), "no sweep named; name its document or its folder");
        }
        return Files.isDirectory(sweep) ? sweep.resolve("sweep.yaml") : sweep;
    }

    /** Where results go. */
    Path folder() {
        if (output != null) {
            return output;
        }
        String name = String.valueOf(document().getFileName()).replaceFirst("\\.[^.]+$", "");
        return document().resolveSibling("results").resolve(name);
    }

    /** Reads the document and its base scenario. */
    SweepDocument read() throws InputException, IOException {
        return SweepReader.read(
                document(), outsideFiles ? FileReach.ANYWHERE : FileReach.FOLDER_OF_DOCUMENT, ProgramVersion.text());
    }

    /**
     * Opens the store to look at it. If the document is not the one that the store was made of, that is said on standard
     * error: what the store answers is of the other one.
     *
     * @return the store
     * @throws IOException if there is none or it cannot be read
     */
    SweepStore store() throws IOException {
        SweepStore store = SweepStore.read(folder().resolve("sweep.sqlite"));
        try {
            if (Files.isRegularFile(document())
                    && !Files.readString(document()).equals(store.text(Definition.SWEEP_DOCUMENT))) {
                Terminal.ofProcess()
                        .message(
                                spec.commandLine().getErr(),
                                "note: " + store.file() + " was made of another sweep document than " + document()
                                        + ", or that has been changed since; what is said here is of the store");
            }
            return store;
        } catch (IOException e) {
            store.close();
            throw e;
        }
    }
}
