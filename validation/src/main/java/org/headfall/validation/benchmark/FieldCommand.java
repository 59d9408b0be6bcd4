package org.headfall.validation.benchmark;

import java.io.IOException;
import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.run.SolutionsBeside;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.SolutionMemory;
import org.headfall.solver.simulation.RunStatistics;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** One whole run of a bore field, printed as one line of {@code key=value}. */
@Command(
        name = "field",
        mixinStandardHelpOptions = true,
        description = "Runs a field of fourteen bores with seasonal rates below a sealing bed with storage, from a cold"
                + " start of the program, and prints what it took as one line.")
final class FieldCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Option(names = "--cells", defaultValue = "1000000", description = "number of cells; default ${DEFAULT-VALUE}")
    private int cells;

    @Option(names = "--years", defaultValue = "50", description = "years; default ${DEFAULT-VALUE}")
    private int years;

    @Option(
            names = "--accuracy",
            defaultValue = "0.01",
            description = "error of head a step may make (m); default 0.01")
    private double accuracy;

    @Option(names = "--threads", defaultValue = "2", description = "threads; default ${DEFAULT-VALUE}")
    private int threads;

    @Option(
            names = "--by",
            defaultValue = "STEPS",
            description =
                    "how heads are found: ${COMPLETION-CANDIDATES}; default ${DEFAULT-VALUE}. By superposition heads of all"
                            + " cells are found once a year, and at the bores once a month")
    private Way way = Way.STEPS;

    /** How heads are found. */
    enum Way {
        STEPS,
        SUPERPOSITION
    }

    @Override
    public Integer call() throws IOException {
        FlowProblem problem = FieldProblem.of(cells, years);
        Settings settings = new Settings(accuracy, Double.POSITIVE_INFINITY, threads);
        long cpuBefore = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        String figures = way == Way.STEPS ? stepped(problem, settings) : superposed(problem, settings);
        double cpu = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpuBefore) * 1e-9;
        PrintWriter out = spec.commandLine().getOut();
        out.println(String.format(
                Locale.ROOT,
                "cells=%d years=%d threads=%d by=%s %s first_thread_cpu_s=%.1f heap_peak_MiB=%d",
                problem.aquifer().grid().cellCount(),
                years,
                threads,
                way.name().toLowerCase(Locale.ROOT),
                figures,
                cpu,
                heapPeak() >> 20));
        out.flush();
        return 0;
    }

    private String stepped(FlowProblem problem, Settings settings) {
        double[] days = FieldProblem.recordDays(years);
        try (Simulation simulation = new Simulation(problem, settings)) {
            RunStatistics took = simulation
                    .run(FieldProblem.startHead(problem), 0, days[days.length - 1], days, snapshot -> {})
                    .statistics();
            return String.format(
                    Locale.ROOT,
                    "seconds=%.1f steps=%d rejected=%d solves=%d iterations=%d largest_step_error_m=%.4f balance=%.1e",
                    took.seconds(),
                    took.steps(),
                    took.rejectedSteps(),
                    took.linearSolves(),
                    took.linearIterations(),
                    took.largestStepError(),
                    took.largestBalanceDiscrepancy());
        }
    }

    private String superposed(FlowProblem problem, Settings settings) throws IOException {
        Path folder = Files.createTempDirectory("headfall-bench");
        try (SolutionsBeside memory = new SolutionsBeside(folder)) {
            return superposed(problem, memory, settings);
        } finally {
            ResultsFolder.delete(folder);
        }
    }

    private String superposed(FlowProblem problem, SolutionMemory memory, Settings settings) {
        SuperposedField run = SuperposedField.of(
                problem, FieldProblem.startHead(problem), FieldProblem.recordDays(years), memory, settings);
        return String.format(
                Locale.ROOT,
                "seconds=%.1f responses_s=%.1f fields_s=%.1f steps=%d solves=%d iterations=%d error_m=%.4f balance=%.1e",
                run.seconds(),
                run.responseSeconds(),
                run.fieldSeconds(),
                run.steps(),
                run.solves(),
                run.iterations(),
                run.error(),
                run.balance());
    }

    /** Most bytes the heap has held, what could have been collected included. */
    private static long heapPeak() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == MemoryType.HEAP)
                .map(MemoryPoolMXBean::getPeakUsage)
                .mapToLong(usage -> usage.getUsed())
                .sum();
    }
}
