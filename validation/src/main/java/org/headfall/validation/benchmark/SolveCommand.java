package org.headfall.validation.benchmark;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** One case, printed as one line of {@code key=value}. */
@Command(
        name = "solve",
        mixinStandardHelpOptions = true,
        description =
                "Solves one case to a relative residual of 1e-8, after warm-up, and prints the medians as one line.")
final class SolveCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Option(names = "--n", defaultValue = "1024", description = "cells a side; default ${DEFAULT-VALUE}")
    private int columns;

    @Option(names = "--rows", description = "rows of cells where they are not as many as columns")
    private int rows;

    @Option(names = "--dt", defaultValue = "1", description = "length of the step in days, or 'steady'; default 1")
    private String step = "1";

    @Option(names = "--threads", defaultValue = "2", description = "threads; default ${DEFAULT-VALUE}")
    private int threads;

    @Option(names = "--rhs", defaultValue = "1", description = "right-hand sides at once, 1 to 16; default 1")
    private int rightHandSides;

    @Option(
            names = "--variant",
            defaultValue = "PLAIN",
            description = "${COMPLETION-CANDIDATES}; default ${DEFAULT-VALUE}")
    private Variant variant = Variant.PLAIN;

    @Option(names = "--repeats", defaultValue = "7", description = "timed solves, at least 7")
    private int repeats;

    @Override
    public Integer call() {
        SolveCase asked = new SolveCase(columns, rows > 0 ? rows : columns, days(), threads, rightHandSides, variant);
        try (SolveTimer timer = new SolveTimer(asked)) {
            timer.warmUp();
            timer.time(Math.max(7, repeats));
            PrintWriter out = spec.commandLine().getOut();
            out.println(timer.measurement(MemoryRate.measure(threads)).line());
            out.flush();
        }
        return 0;
    }

    private double days() {
        return step.equals("steady") ? Double.POSITIVE_INFINITY : Double.parseDouble(step);
    }
}
