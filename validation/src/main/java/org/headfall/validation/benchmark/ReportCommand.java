package org.headfall.validation.benchmark;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.headfall.scenarios.report.ReportWriter;
import org.headfall.scenarios.report.RunReport;
import org.headfall.scenarios.results.ResultsReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The report of a finished run: how long it takes to make, how large it is, how fast it answers in a browser. */
@Command(
        name = "report",
        mixinStandardHelpOptions = true,
        description =
                "Makes the report of a finished run and opens it in chromium, if that is on the path. Bars for the"
                        + " example: generation 5 s, size 6 MB, first paint 1000 ms, what-if 50 ms.")
final class ReportCommand implements Callable<Integer> {

    private static final int CHANGES = 20;

    /** A further change of all rates that follow nothing but what is asked, and the time that the page took for it. */
    private static final String CHANGE =
            "whatIf.changes.forEach((c, i) => { if (report.whatIf.takers[i].rule === 'RATE') c.factor = 0.5 + %d / 40 });"
                    + "recompute(); whatIf.milliseconds";

    @Parameters(paramLabel = "RESULTS", description = "Folder that a run has written.")
    private Path results = Path.of("");

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, InterruptedException {
        Path page = Files.createTempFile("headfall-report", ".html");
        try {
            long start = System.nanoTime();
            ReportWriter.write(RunReport.of(new ResultsReader().read(results), results), page);
            double seconds = (System.nanoTime() - start) * 1e-9;
            Optional<Path> chromium = BrowserSession.onPath();
            String browser = chromium.isPresent() ? browserFigures(chromium.get(), page) : "browser=missing";
            PrintWriter out = spec.commandLine().getOut();
            out.printf(Locale.ROOT, "generation_s=%.2f size_bytes=%d %s%n", seconds, Files.size(page), browser);
            out.flush();
        } finally {
            Files.deleteIfExists(page);
        }
        return 0;
    }

    private static String browserFigures(Path chromium, Path page) throws IOException, InterruptedException {
        try (BrowserSession browser = new BrowserSession(chromium)) {
            browser.open(page);
            browser.evaluate("new Promise(go => { const wait = () => typeof ready === 'undefined' ? setTimeout(wait, 5)"
                    + " : ready.then(() => go(1)); wait(); })");
            double ready = browser.evaluate("performance.now()");
            double paint = browser.evaluate("performance.getEntriesByName('first-contentful-paint')[0].startTime");
            String figures = String.format(Locale.ROOT, "first_paint_ms=%.0f ready_ms=%.0f", paint, ready);
            return browser.evaluate("report.whatIf ? 1 : 0") == 1 ? figures + changes(browser) : figures;
        }
    }

    private static String changes(BrowserSession browser) throws IOException {
        double[] milliseconds = new double[CHANGES];
        double first = browser.evaluate(String.format(Locale.ROOT, CHANGE, CHANGES));
        for (int i = 0; i < CHANGES; i++) {
            milliseconds[i] = browser.evaluate(String.format(Locale.ROOT, CHANGE, i));
        }
        Arrays.sort(milliseconds);
        return String.format(
                Locale.ROOT,
                " what_if_first_ms=%.0f what_if_ms=%.1f what_if_worst_ms=%.1f",
                first,
                milliseconds[CHANGES / 2],
                milliseconds[CHANGES - 1]);
    }
}
