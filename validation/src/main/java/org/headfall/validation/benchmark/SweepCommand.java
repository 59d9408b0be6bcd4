package org.headfall.validation.benchmark;

import java.io.IOException;
import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.headfall.cli.Headfall;
import org.headfall.cli.Terminal;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.sweep.document.BaseScenario;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.SweepReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Measures the figures of sweeps that have a bar, with processor time beside elapsed time: other programs may run. */
@Command(
        name = "sweep",
        mixinStandardHelpOptions = true,
        description = "Measures sweeps of an invented field of 256 x 256 cells, 50 years by months, 16 bores.",
        footerHeading = "%nParts:%n",
        footer = {
            "  overhead     reading and planning a run whose transmissivity differs (ms); bar 5, aim 1",
            "  rates        20,000 runs that differ in rates alone (s); bar 180, aim 30",
            "  fields       runs whose transmissivity differs, and what 2,000 of them take on two threads (min); bar 25",
            "  layouts      runs that differ in spacing and number of bores in one aquifer, and what 1,000 of them take (min); bar 5",
            "  threads      work of two threads over that of one in the same time (%%); bar 90, aim 97",
            "  rows         100,000 rows; call with HEADFALL_JAVA_OPTIONS=-Xmx512m to keep to the aim (bar -Xmx1g)"
        })
final class SweepCommand implements Callable<Integer> {

    private static final double NANO = 1e-9;
    private static final int TRANSMISSIVITY_RUNS = 2000;
    private static final int LAYOUT_RUNS = 1000;
    private static final int PLANNED_RUNS = 30;
    private static final double SECONDS_PER_MINUTE = 60;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Parameters(paramLabel = "PART", description = "which parts; all but rows if none is named")
    private List<String> parts = List.of("overhead", "rates", "fields", "layouts", "threads");

    @Option(names = "--threads", defaultValue = "2", description = "threads; default ${DEFAULT-VALUE}")
    private int threads;

    @Option(names = "--rate-runs", defaultValue = "20000", description = "runs of rates; default ${DEFAULT-VALUE}")
    private int rateRuns;

    @Option(names = "--rows", defaultValue = "100000", description = "rows of the part rows; default ${DEFAULT-VALUE}")
    private int rowCount;

    @Option(
            names = "--field-runs",
            defaultValue = "40",
            description = "runs of fields, of layouts and of the threads' sample; default ${DEFAULT-VALUE}")
    private int fieldRuns;

    /** What a sweep took. */
    private record Took(double seconds, double processorSeconds) {}

    @Override
    public Integer call() throws InputException, IOException {
        try (SweepProblem problem = new SweepProblem()) {
            for (String part : parts) {
                switch (part) {
                    case "overhead" -> overhead(problem.ofTransmissivity("overhead", PLANNED_RUNS));
                    case "rates" -> {
                        Took took = sweep(problem.ofRates("rates", rateRuns), threads);
                        print(
                                "rates runs=%d threads=%d elapsed_s=%.1f cpu_s=%.1f",
                                rateRuns, threads, took.seconds(), took.processorSeconds());
                    }
                    case "fields" ->
                        sample("fields", problem.ofTransmissivity("fields", fieldRuns), TRANSMISSIVITY_RUNS);
                    case "layouts" -> sample("layouts", problem.ofLayouts("layouts", fieldRuns), LAYOUT_RUNS);
                    case "threads" -> efficiency(problem);
                    case "rows" -> rows(problem);
                    default -> throw new IllegalArgumentException("no part " + part);
                }
            }
        }
        return 0;
    }

    private void overhead(Path document) throws InputException, IOException {
        SweepDocument sweep = SweepReader.read(document, FileReach.FOLDER_OF_DOCUMENT, "benchmark");
        RunList runs = new RunList(sweep);
        BaseScenario base = sweep.base();
        ThreadMXBean thread = ManagementFactory.getThreadMXBean();
        double[] milliseconds = new double[runs.size()];
        for (int run = 0; run < milliseconds.length; run++) {
            long begun = thread.getCurrentThreadCpuTime();
            RunPlanner.plan(base.read(base.with(runs.get(run))), "benchmark", 1);
            milliseconds[run] = (thread.getCurrentThreadCpuTime() - begun) * NANO * 1000;
        }
        // The first half warms up.
        double[] warm = Arrays.copyOfRange(milliseconds, milliseconds.length / 2, milliseconds.length);
        Arrays.sort(warm);
        print("overhead runs=%d cpu_ms=%.2f", warm.length, warm[warm.length / 2]);
    }

    /** Runs a sample, and says what all would take if each took as long as one of the sample, with processor time shared by two. */
    private void sample(String name, Path document, int all) {
        Took took = sweep(document, threads);
        double share = (double) all / fieldRuns / SECONDS_PER_MINUTE;
        print(
                "%s runs=%d threads=%d elapsed_s=%.1f cpu_s=%.1f cpu_of_run_s=%.3f"
                        + " runs_of_bar=%d all_elapsed_min=%.1f all_cpu_min_by_two=%.1f",
                name,
                fieldRuns,
                threads,
                took.seconds(),
                took.processorSeconds(),
                took.processorSeconds() / fieldRuns,
                all,
                took.seconds() * share,
                took.processorSeconds() * share / 2);
    }

    private void efficiency(SweepProblem problem) throws IOException {
        Took one = sweep(problem.ofTransmissivity("one", fieldRuns), 1);
        Took two = sweep(problem.ofTransmissivity("two", fieldRuns), 2);
        print(
                "threads runs=%d one_s=%.1f two_s=%.1f efficiency=%.0f %% cpu_one_s=%.1f cpu_two_s=%.1f",
                fieldRuns,
                one.seconds(),
                two.seconds(),
                100 * one.seconds() / (2 * two.seconds()),
                one.processorSeconds(),
                two.processorSeconds());
    }

    private void rows(SweepProblem problem) throws IOException {
        Took took = sweep(problem.ofRows("rows", rowCount), threads);
        print(
                "rows rows=%d heap_mib=%d elapsed_s=%.1f cpu_s=%.1f",
                rowCount, Runtime.getRuntime().maxMemory() >> 20, took.seconds(), took.processorSeconds());
    }

    private Took sweep(Path document, int onThreads) {
        long begun = System.nanoTime();
        double processor = ProcessorTime.seconds();
        PrintWriter out = spec.commandLine().getOut();
        int code = Headfall.execute(
                Terminal.NONE,
                out,
                spec.commandLine().getErr(),
                "sweep",
                document.toString(),
                "--quiet",
                "--threads",
                Integer.toString(onThreads));
        if (code != 0) {
            throw new IllegalStateException("the sweep ended with exit code " + code);
        }
        return new Took((System.nanoTime() - begun) * NANO, ProcessorTime.seconds() - processor);
    }

    private void print(String format, Object... values) {
        PrintWriter out = spec.commandLine().getOut();
        out.printf(Locale.ROOT, format + "%n", values);
        out.flush();
    }
}
