package org.headfall.scenarios.allocation;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Prices of limits where a spring and a free-flowing bore answer what is taken. The reference is another allocation, under a
 * limit that allows a little more.
 */
class AnsweredPricesTest {

    private static final Path EXAMPLE = Path.of("examples", "corella");
    private static final double MEGALITRES_PER_YEAR = 365.25 / 1000;

    @TempDir
    private Path folder;

    @BeforeEach
    void copy() throws IOException {
        try (Stream<Path> files = Files.list(EXAMPLE)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
    }

    private void shorten() throws IOException {
        replace("period: {from: 2027-07-01, for: 20 yr}", "period: {from: 2027-07-01, for: 6 yr}");
        replace("  for: 20 yr\n", "");
        replace("report_after: [1 yr, 10 yr, 20 yr]", "report_after: [1 yr, 5 yr]");
        replace("rates_change_after: 10 yr", "rates_change_after: 3 yr");
    }

    private void replace(String part, String by) throws IOException {
        Path document = folder.resolve("scenario.yaml");
        Files.writeString(document, Files.readString(document).replace(part, by));
    }

    private AllocationResult allocate() throws Exception {
        ScenarioReading reading = ScenarioReader.read(folder.resolve("scenario.yaml"), FileReach.FOLDER_OF_DOCUMENT);
        RunPlan plan = RunPlanner.plan(reading, "test", 1);
        return AllocationSearch.in(
                plan, reading.orThrow(), PlanningResponses.of(plan, folder), (stage, fraction) -> {});
    }

    private void look(String what, String limit, double at) throws Exception {
        for (boolean old : new boolean[] {true, false}) {
            System.setProperty("old", "" + old);
            AllocationResult r = allocate();
            System.err.println(what + (old ? " OLD" : " NEW") + " yield " + r.yield() * MEGALITRES_PER_YEAR + " energy "
                    + r.energy() * 365.25 / 1000 + " rounds " + r.rounds() + " worst " + r.worst() + " " + r.relaxed());
            r.requirements().stream().filter(o -> o.price() > 0).forEach(one -> System.err.println("   " + one));
            r.bores().forEach(one -> System.err.println("   " + one));
            if (!old)
                for (double more : new double[] {0.02, 0.1}) {
                    replace(limit + at + " m", limit + (at + more) + " m");
                    AllocationResult q = allocate();
                    System.err.println(what + " " + more + " " + (q.yield() - r.yield()) * MEGALITRES_PER_YEAR / more
                            + " energy " + (r.energy() - q.energy()) * 365.25 / 1000 / more + " " + q.rounds());
                    replace(limit + (at + more) + " m", limit + at + " m");
                }
        }
    }

    @Test
    void looking() throws Exception {
        shorten();
        replace("at_most: 3 m", "at_most: 3.0 m");
        look("6 yr", "at_most: ", 3.0);
        replace("at_most: 3.0 m", "at_most: 20 m");
        replace("at_most: 9 m", "at_most: 1.0 m");
        look("wirra", "at_most: ", 1.0);
        replace("at_most: 1.0 m", "at_most: 9 m");
        replace("at_most: 20 m", "at_most: 1.3 m");
        replace("goal: largest yield", "goal: least energy\n  total: 14 L/s");
        look("energy", "at_most: ", 1.3);
        replace("goal: least energy", "goal: least effect on springs");
        look("springs", "at_most: ", 1.3);
        replace("at_most: 1.3 m", "at_most: 1.0 m");
        look("springs relaxed", "at_most: ", 1.0);
        replace("goal: least effect on springs", "goal: least energy");
        look("energy relaxed", "at_most: ", 1.0);
    }
}
