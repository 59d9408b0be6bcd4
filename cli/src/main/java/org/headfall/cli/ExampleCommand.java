package org.headfall.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Copies the built-in example, to look at, to run and to change. */
@Command(
        name = "example",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Copies the built-in example, an invented bore field, into a new folder.",
        footerHeading = "%nExample:%n",
        footer = {"  headfall example my-field", "  headfall run my-field"})
final class ExampleCommand implements Callable<Integer> {

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    @Parameters(paramLabel = "FOLDER", description = "Folder to make; must not exist yet or be empty.")
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private Path folder;

    @Override
    public Integer call() throws IOException {
        if (Files.exists(folder) && !isEmptyFolder(folder)) {
            throw new FileAlreadyExistsException(folder.toString(), null, "exists already; name a new folder");
        }
        BuiltInExample.copyTo(folder);
        spec.commandLine().getOut().println("The example is in " + folder + ". Run it: headfall run " + folder);
        return ExitCode.DONE.code();
    }

    private static boolean isEmptyFolder(Path path) throws IOException {
        if (!Files.isDirectory(path)) {
            return false;
        }
        try (Stream<Path> content = Files.list(path)) {
            return content.findAny().isEmpty();
        }
    }
}
