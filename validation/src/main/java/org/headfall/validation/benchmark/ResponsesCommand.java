package org.headfall.validation.benchmark;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.Callable;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.recording.PointHeads;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.response.RateSweep;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.response.UnitResponses;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Times unit responses of a scenario, answering it from them as a process of its own, and a sweep of many sets of rates. */
@Command(
        name = "responses",
        mixinStandardHelpOptions = true,
        description = "Times unit responses of a scenario (the example has 24 bores and springs on 156,740 cells for 50"
                + " years), answering it again from them by a whole process, and a sweep of sets of monthly rates.")
final class ResponsesCommand implements Callable<Integer> {

    private static final double DAYS_PER_MONTH = 30.4375;
    private static final double NANO = 1e-9;
    private static final double LARGEST_RATE = 3000;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Parameters(paramLabel = "SCENARIO", description = "scenario document")
    private Path scenario = Path.of("scenario.yaml");

    @Option(names = "--threads", defaultValue = "2", description = "threads; default ${DEFAULT-VALUE}")
    private int threads;

    @Option(names = "--sets", defaultValue = "10000", description = "sets of rates; default ${DEFAULT-VALUE}")
    private int sets;

    @Option(
            names = "--launcher",
            paramLabel = "FILE",
            description = "the script that starts headfall, to time a process")
    private @Nullable Path launcher;

    @Option(names = "--repeats", defaultValue = "5", description = "processes timed; default ${DEFAULT-VALUE}")
    private int repeats;

    @Override
    public Integer call() throws InputException, IOException, InterruptedException {
        RunPlan plan = RunPlanner.plan(
                ScenarioReader.read(scenario, FileReach.FOLDER_OF_DOCUMENT), "Headfall benchmark", threads);
        long start = System.nanoTime();
        double cpu = ProcessorTime.seconds();
        StationResponses computed = StationResponses.fromSteady(
                plan.problem(),
                PointHeads.of(plan.description(), plan.problem().boundaries()),
                plan.description().endDay(),
                plan.settings());
        UnitResponses responses = computed.responses();
        print(
                "responses causes=%d receptors=%d cells=%d days=%.0f seconds=%.2f cpu_s=%.2f",
                responses.causes(),
                responses.receptors(),
                plan.description().grid().cellCount(),
                plan.description().endDay(),
                (System.nanoTime() - start) * NANO,
                ProcessorTime.seconds() - cpu);
        if (launcher != null) {
            timeProcesses(launcher);
        }
        sweep(responses, plan.description().endDay());
        return 0;
    }

    private void print(String format, Object... values) {
        PrintWriter out = spec.commandLine().getOut();
        out.printf(Locale.ROOT, format + "%n", values);
        out.flush();
    }

    /** Answers the scenario from the results of a run of it, as a user would. */
    private void timeProcesses(Path script) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("headfall-bench");
        try {
            double[] seconds = new double[repeats];
            HeadfallProcess headfall = new HeadfallProcess(script);
            String results = folder.resolve("results").toString();
            headfall.command("run", scenario.toString(), "--output", results, "--quiet");
            for (int i = 0; i < repeats; i++) {
                seconds[i] = headfall.command(
                                "estimate",
                                scenario.toString(),
                                "--responses",
                                results,
                                "--output",
                                folder.resolve("answer").toString(),
                                "--overwrite")
                        .seconds();
            }
            Arrays.sort(seconds);
            print("estimate processes=%d least_s=%.2f median_s=%.2f", repeats, seconds[0], seconds[repeats / 2]);
        } finally {
            ResultsFolder.delete(folder);
        }
    }

    private void sweep(UnitResponses responses, double days) {
        int months = (int) (days / DAYS_PER_MONTH);
        double[] random = new Random(1).doubles(1 << 16, 0, LARGEST_RATE).toArray();
        double[][] largest = new double[(sets + RateSweep.BLOCK - 1) / RateSweep.BLOCK][responses.receptors()];
        long start = System.nanoTime();
        double cpu = ProcessorTime.seconds();
        try (WorkerTeam team = new WorkerTeam(threads)) {
            RateSweep sweep = new RateSweep(responses, DAYS_PER_MONTH, months);
            sweep.run(
                    sets,
                    (set, step, cause) -> random[(set * 7919 + step * 104_729 + cause) & (random.length - 1)],
                    (first, count, step, drawdown) -> keepLargest(largest[first / RateSweep.BLOCK], count, drawdown),
                    team);
            print(
                    "sweep sets=%d months=%d causes=%d receptors=%d seconds=%.2f cpu_s=%.2f misfit_mm_per_L_s=%.1e largest_m=%.1f",
                    sets,
                    months,
                    responses.causes(),
                    responses.receptors(),
                    (System.nanoTime() - start) * NANO,
                    ProcessorTime.seconds() - cpu,
                    sweep.misfit() * 86_400,
                    List.of(largest).stream()
                            .flatMapToDouble(Arrays::stream)
                            .max()
                            .orElse(0));
        }
    }

    /** Largest drawdown of any set of a block at each receptor: so that no result is left unread. */
    private static void keepLargest(double[] largest, int count, double[] drawdown) {
        for (int receptor = 0; receptor < largest.length; receptor++) {
            for (int s = 0; s < count; s++) {
                largest[receptor] = Math.max(largest[receptor], drawdown[receptor * RateSweep.BLOCK + s]);
            }
        }
    }
}
