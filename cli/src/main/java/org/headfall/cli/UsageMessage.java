package org.headfall.cli;

import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says in a few lines what is wrong with a command line, what was probably meant, and where to read on. */
final class UsageMessage implements IParameterExceptionHandler {

    private final Terminal terminal;

    UsageMessage(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public int handleParseException(ParameterException wrong, String[] arguments) {
        CommandLine command = wrong.getCommandLine();
        PrintWriter err = command.getErr();
        terminal.message(err, "headfall: " + wrong.getMessage());
        UnmatchedArgumentException.printSuggestions(wrong, err);
        err.println(command.getHelp().fullSynopsis().stripTrailing());
        err.println("For help: " + command.getCommandSpec().qualifiedName() + " --help");
        return ExitCode.USAGE.code();
    }
}
