package org.headfall.validation.benchmark;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.results.ResultsFolder;

/** The bars of whole processes, each started from nothing. */
final class ProcessBars {
    private static final Pattern HEAP = Pattern.compile("heap_peak_MiB=([0-9]+)");
    private static final String THREADS = "2";

    private final BarSizes sizes;
    private final Path launcher;
    private final HeadfallProcess headfall;
    private final String example;
    private final BarTable table;
    private final PrintWriter out;

    /**
     * Makes ready to measure.
     *
     * @param home the folder that the sources stand in
     */
    ProcessBars(BarSizes sizes, Path home, BarTable table, PrintWriter out) {
        this.sizes = sizes;
        launcher = home.resolve("cli/headfall");
        headfall = new HeadfallProcess(launcher);
        this.example =
                home.resolve("scenarios/examples").resolve(sizes.example()).toString();
        this.table = table;
        this.out = out;
    }

    void measure(Set<BarPart> parts) throws IOException, InterruptedException {
        if (parts.contains(BarPart.CHECK)) {
            check();
        }
        if (parts.contains(BarPart.EXAMPLE)) {
            example();
        }
        if (parts.contains(BarPart.FIELD)) {
            field();
        }
        if (parts.contains(BarPart.PLANNING)) {
            responses();
            planning();
        }
    }

    private void check() throws IOException, InterruptedException {
        Medians seconds = new Medians();
        for (int i = 0; i < sizes.checks(); i++) {
            seconds.add(headfall.command("check", example).seconds());
        }
        report("check", seconds.median(), "");
        table.add(Bar.CHECK_SECONDS, seconds.median(), "");
    }

    private void example() throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("headfall-bench");
        try {
            String results = folder.resolve("results").toString();
            double seconds = headfall.command("run", example, "--output", results, "--threads", THREADS, "--quiet")
                    .seconds();
            report("run", seconds, "");
            table.add(Bar.EXAMPLE_SECONDS, seconds, "");
        } finally {
            ResultsFolder.delete(folder);
        }
    }

    private void field() throws IOException, InterruptedException {
        HeadfallProcess.Ended ended = headfall.benchmark(
                "-Xmx1g",
                "field",
                "--cells",
                String.valueOf(sizes.fieldCells()),
                "--years",
                String.valueOf(sizes.fieldYears()),
                "--threads",
                THREADS,
                "--by",
                FieldCommand.Way.SUPERPOSITION.name());
        report("field", ended.seconds(), ended.output().strip());
        table.add(Bar.FIELD_SECONDS, ended.seconds(), "");
        Matcher heap = HEAP.matcher(ended.output());
        if (heap.find()) {
            table.add(Bar.FIELD_HEAP, Double.parseDouble(heap.group(1)), "");
        }
    }

    private void responses() throws IOException, InterruptedException {
        HeadfallProcess.Ended ended = headfall.benchmark(
                "",
                "responses",
                Path.of(example).resolve("scenario.yaml").toString(),
                "--threads",
                THREADS,
                "--sets",
                String.valueOf(sizes.rateSets()),
                "--launcher",
                launcher.toString(),
                "--repeats",
                String.valueOf(sizes.checks()));
        report("responses", ended.seconds(), ended.output().strip());
        addPrinted(Bar.RESPONSES_SECONDS, ended, "responses causes=", "seconds");
        addPrinted(Bar.ESTIMATE_SECONDS, ended, "estimate processes=", "median_s");
        addPrinted(Bar.RATE_SETS_SECONDS, ended, "sweep sets=", "seconds");
    }

    private void planning() throws IOException, InterruptedException {
        HeadfallProcess.Ended ended = headfall.benchmark(
                "",
                "planning",
                "--threads",
                THREADS,
                "--cells",
                String.valueOf(sizes.siteCells()),
                "--allocation-cells",
                String.valueOf(sizes.allocationCells()),
                "--years-alike",
                String.valueOf(sizes.yearsAlike()));
        report("planning", ended.seconds(), ended.output().strip());
        addPrinted(Bar.SITES_SECONDS, ended, "site search ", "seconds");
        addPrinted(Bar.ALLOCATION_SECONDS, ended, "allocation bores=", "seconds");
    }

    /** Takes down a time that a benchmark printed in the line that begins so. */
    private void addPrinted(Bar bar, HeadfallProcess.Ended ended, String begins, String name) {
        Matcher time = Pattern.compile("(?m)^" + Pattern.quote(begins) + ".*\\b" + name + "=([0-9.]+)")
                .matcher(ended.output());
        if (!time.find()) {
            throw new IllegalStateException("no line '" + begins + "' with " + name + " in: " + ended.output());
        }
        table.add(bar, Double.parseDouble(time.group(1)), "");
    }

    private void report(String what, double seconds, String more) {
        out.printf(Locale.ROOT, "%s process_s=%.2f %s%n", what, seconds, more);
        out.flush();
    }
}
