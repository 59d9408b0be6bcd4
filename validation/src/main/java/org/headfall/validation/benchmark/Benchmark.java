package org.headfall.validation.benchmark;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The program behind {@code validation/bench}: times the linear solver on {@link BenchmarkProblem}, runs and reports. */
@Command(
        name = "bench",
        mixinStandardHelpOptions = true,
        subcommands = {
            SolveCommand.class,
            FieldCommand.class,
            ReportCommand.class,
            ResponsesCommand.class,
            SweepCommand.class,
            PlanningCommand.class,
            AllCommand.class
        },
        description =
                "Times the linear solver on the benchmark problem, whole runs and their report, unit responses, and sweeps.")
public final class Benchmark {
    private Benchmark() {}

    /** Runs a subcommand and ends with its exit code. */
    public static void main(String[] arguments) {
        System.exit(new CommandLine(new Benchmark()).execute(arguments));
    }
}
