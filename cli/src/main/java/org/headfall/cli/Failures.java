package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.headfall.cli.answer.AnswerJson;
import org.headfall.scenarios.problem.FileFailure;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.Problem;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.solver.flow.NoSteadyStateException;
import org.headfall.solver.flow.UnmetRuleException;
import org.headfall.solver.linear.SolveFailedException;
import org.headfall.solver.time.StepSizeException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParseResult;

/** Turns what a command threw into a message and an exit code. Users never see a stack trace. */
final class Failures implements IExecutionExceptionHandler {

    private final Terminal terminal;
    private final List<String> arguments;

    /**
     * Makes a handler.
     *
     * @param terminal what is at the other end of the streams
     * @param arguments the command line, for the crash report
     */
    Failures(Terminal terminal, List<String> arguments) {
        this.terminal = terminal;
        this.arguments = List.copyOf(arguments);
    }

    @Override
    public int handleExecutionException(Exception thrown, CommandLine command, ParseResult parsed) {
        if (command.getParseResult().hasMatchedOption(JsonOption.NAME)) {
            command.getOut().println(json(thrown));
        }
        return report(thrown, command.getErr());
    }

    private static String json(Exception thrown) {
        if (thrown instanceof InputException input) {
            return AnswerJson.ofProblems(input.problems());
        }
        if (thrown instanceof IOException file) {
            return AnswerJson.ofError(describe(file));
        }
        return AnswerJson.ofError(isOfTheInput(thrown) ? ofTheInput(thrown) : thrown.toString());
    }

    /** What the solver cannot answer because of what it was given. */
    private static boolean isOfTheInput(Throwable thrown) {
        return thrown instanceof UnmetRuleException
                || thrown instanceof NoSteadyStateException
                || thrown instanceof SolveFailedException
                || thrown instanceof StepSizeException;
    }

    /** The messages say what to change, but for that of the linear solver, which knows no aquifers. */
    private static String ofTheInput(Throwable thrown) {
        String advice = thrown instanceof SolveFailedException
                ? ": look for values of transmissivity, storativity or cell size that differ by many powers of ten, or allow"
                        + " a larger output.head_tolerance"
                : "";
        return thrown.getMessage() + advice;
    }

    /** Writes what there is to say about a failure; answers the exit code. */
    int report(Throwable thrown, PrintWriter err) {
        if (thrown instanceof InputException input) {
            return reportProblems(input.problems(), err);
        }
        if (thrown instanceof IOException file) {
            terminal.message(err, "headfall: " + describe(file));
            if (file instanceof ResultsException results && results.kind() == ResultsException.Kind.EXISTS) {
                terminal.message(err, "Name another folder with --output, or replace them with --overwrite.");
            }
            return ExitCode.INPUT.code();
        }
        if (isOfTheInput(thrown)) {
            terminal.message(err, "headfall: " + ofTheInput(thrown));
            return ExitCode.INPUT.code();
        }
        if (thrown instanceof UncheckedIOException file) {
            return report(Objects.requireNonNull(file.getCause()), err);
        }
        if (Stream.iterate(thrown, Objects::nonNull, Throwable::getCause)
                .anyMatch(OutOfMemoryError.class::isInstance)) {
            terminal.message(
                    err,
                    "headfall: not enough memory. Give it more, such as HEADFALL_JAVA_OPTIONS=-Xmx6g, or take"
                            + " larger cells.");
            return ExitCode.FAULT.code();
        }
        return reportFault(thrown, err);
    }

    private int reportProblems(List<Problem> problems, PrintWriter err) {
        problems.forEach(problem -> terminal.message(err, problem.toString()));
        err.println(
                problems.size() == 1 ? "1 problem; nothing was run." : problems.size() + " problems; nothing was run.");
        return ExitCode.INPUT.code();
    }

    /** The exceptions of java.nio say only a path; this adds what is the matter with it. */
    private static String describe(IOException thrown) {
        if (thrown instanceof FileSystemException file && file.getReason() == null) {
            return file.getFile() + ": " + FileFailure.reason(file);
        }
        return Optional.ofNullable(thrown.getMessage()).orElse(thrown.toString());
    }

    private int reportFault(Throwable thrown, PrintWriter err) {
        terminal.message(err, "headfall: a fault of the program, not of your input: " + thrown);
        try {
            terminal.message(err, "Details are in " + CrashReport.write(thrown, arguments) + ".");
            terminal.message(
                    err, "Please send that file, and the scenario folder if you may, to those who maintain Headfall.");
        } catch (IOException unwritable) {
            terminal.message(err, "No crash report could be written: " + describe(unwritable));
        }
        return ExitCode.FAULT.code();
    }
}
