package org.headfall.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;
import org.headfall.scenarios.sweep.work.RunEngine;
import org.headfall.scenarios.sweep.work.ThreadEngine;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/**
 * The program: all commands under one name. None has methods that are commands, which each says by {@code addMethodSubcommands},
 * so that picocli does not look through the methods of its class for some at every start.
 */
@Command(
        name = "headfall",
        versionProvider = ProgramVersion.class,
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Says how far heads fall around a field of artesian bores, and for whom.",
        synopsisSubcommandLabel = "COMMAND",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "1:the scenario, one of its files or the output folder is at fault",
            "2:the command line could not be understood",
            "3:a limit is crossed and --fail-on-limit was given",
            "4:the time allowed to a sweep ended before all runs were made",
            "5:some runs of a sweep failed, or would; if all did, 1",
            "70:headfall itself failed",
            "130, 143:stopped by Ctrl-C, or by a request to terminate"
        },
        footerHeading = "%nExample:%n",
        footer = {"  headfall example my-field", "  headfall run my-field"})
public final class Headfall implements Runnable {
    /** Where picocli looks for types of options that it need not make ready to read, which costs a short command time. */
    private static final String TYPES_NOT_READ = "picocli.converters.excludes";

    /** Times and databases, which no option is. */
    static final String TYPES_OF_NO_OPTION = "java\\.(sql|time)\\..*";

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before run
    private CommandSpec spec;

    /** Without a command there is nothing to do but say how it is used. */
    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(),
                "no command given; there are "
                        + String.join(", ", spec.subcommands().keySet()));
    }

    /**
     * Runs a command and ends the process with its exit code.
     *
     * @param arguments the command line
     */
    public static void main(String[] arguments) {
        System.setProperty(TYPES_NOT_READ, TYPES_OF_NO_OPTION);
        Terminal terminal = Terminal.ofProcess();
        StandardOutput output = new StandardOutput(new FileOutputStream(FileDescriptor.out));
        PrintWriter out = new PrintWriter(new OutputStreamWriter(output, StandardCharsets.UTF_8), true);
        PrintWriter err = new PrintWriter(new OutputStreamWriter(System.err, StandardCharsets.UTF_8), true);
        int code = execute(terminal, out, err, arguments);
        out.flush();
        if (output.isIncomplete() && code == ExitCode.DONE.code()) {
            err.println("headfall: the answer could not be written to the standard output");
            code = ExitCode.INPUT.code();
        }
        err.flush();
        System.exit(code);
    }

    /**
     * Runs a command.
     *
     * @param terminal what is at the other end of the streams
     * @param out receives answers
     * @param err receives messages and progress
     * @param arguments the command line
     * @return the number of an {@link ExitCode}
     */
    public static int execute(Terminal terminal, PrintWriter out, PrintWriter err, String... arguments) {
        return execute(terminal, new ThreadEngine(), out, err, arguments);
    }

    /**
     * Runs a command, with the runs of a sweep made elsewhere than on threads of this process.
     *
     * @param terminal what is at the other end of the streams
     * @param engine makes the runs of a sweep
     * @param out receives answers
     * @param err receives messages and progress
     * @param arguments the command line
     * @return the number of an {@link ExitCode}
     */
    public static int execute(
            Terminal terminal, RunEngine engine, PrintWriter out, PrintWriter err, String... arguments) {
        Failures failures = new Failures(terminal, List.of(arguments));
        try {
            return commandLine(terminal, engine, failures, arguments)
                    .setOut(out)
                    .setErr(err)
                    .execute(arguments);
        } catch (StackOverflowError | OutOfMemoryError exhausted) {
            return failures.report(exhausted, err);
        }
    }

    /**
     * All commands under one name, those of other modules among them, to be described and not run.
     *
     * @return the program as picocli sees it
     */
    public static CommandLine allCommands() {
        return commandLine(Terminal.NONE, new ThreadEngine(), new Failures(Terminal.NONE, List.of()));
    }

    /** All commands, or only the one that the arguments begin with if it is one of this module. */
    private static CommandLine commandLine(
            Terminal terminal, RunEngine engine, Failures failures, String... arguments) {
        CommandLine commandLine = new CommandLine(new Headfall());
        Optional<OwnCommand> called = arguments.length > 0 ? OwnCommand.called(arguments[0]) : Optional.empty();
        if (called.isPresent()) {
            // Describing the others takes as long as a short answer.
            commandLine.addSubcommand(called.get().made(terminal, engine));
        } else {
            for (OwnCommand command : OwnCommand.values()) {
                commandLine.addSubcommand(command.made(terminal, engine));
            }
            for (CommandContribution contribution : ServiceLoader.load(CommandContribution.class)) {
                commandLine.addSubcommand(contribution.command());
            }
        }
        commandLine.setColorScheme(Help.defaultColorScheme(terminal.ansi()));
        commandLine.setUsageHelpAutoWidth(false);
        commandLine.setExecutionExceptionHandler(failures);
        commandLine.setParameterExceptionHandler(new UsageMessage(terminal));
        return commandLine;
    }
}
