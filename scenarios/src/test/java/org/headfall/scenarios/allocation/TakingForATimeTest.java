package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Bores that take for the first two years of ten, and a point 7.5 km away where head is lowest only after that. The reference is
 * the simulator, and another allocation.
 */
class TakingForATimeTest {

    private static final String DOCUMENT = """
            title: A field
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 10 yr}
            grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 10 km}, cell: 500 m}
            aquifer: {transmissivity: 200 m2/d, storativity: 5e-3, top: -400 m, bottom: -500 m}
            ground: 110 m
            boundaries:
              - {name: west, side: west, fixed_head: 100 m}
            protected:
              - {name: far, at: [8.75 km, 5.25 km]}
            bores:
              - {name: one, at: [1.25 km, 5.25 km], group: proposed, screen_radius: 100 mm, rate: 1 L/s}
            limits:
              - {name: far, quantity: drawdown, at: far, cause: proposed bores, compared_with: without them, when: ever, at_most: 1 m}
            start: {heads: 100 m}
            output: {grids: yearly, bores: monthly, report_after: [1 yr], head_tolerance: 0.5 mm}
            allocation:
              goal: largest yield
              TAKING
              largest_rate: 100 L/s
              efficiency: 60 %
            """;

    private static final int ONE = 0;

    @TempDir
    private Path folder;

    private RunPlan plan;

    private AllocationResult allocate(String taking) throws Exception {
        AllocationDocument document = AllocationDocument.of(folder, DOCUMENT.replace("TAKING", taking));
        plan = document.plan();
        return document.allocate(plan);
    }

    @Test
    void limitsAreKeptAfterTheTakingToo() throws Exception {
        AllocationResult result = allocate("for: 2 yr");
        double rate = result.bores().get(0).rates().get(0);
        assertEquals(731, result.blocks().blocks().get(0).end());
        assertEquals(rate, result.yield(), 1e-9 * rate);
        StationSeries far = RunInMemory.stations(new RatesInPlan(plan, result.blocks(), new int[] {ONE})
                        .with(new double[] {rate}, new double[0]))
                .get(plan.description().stationIndex("far"));
        double largest = 100 - Arrays.stream(far.head()).min().orElseThrow();
        assertEquals(1 - result.requirements().get(0).reserve(), largest, 1e-3);
        assertTrue(100 - far.headAt(731) < 0.9 * largest, "when taking stops " + (100 - far.headAt(731)));
        assertTrue(
                result.requirements().get(0).day() > 731, result.requirements().toString());
        assertTrue(result.yield() > allocate("").yield() * 1.1, "for a shorter time more can be taken");
    }

    /** What is written, and drawn, is of the two years (731 days with a leap year) and not of the ten (3,653). */
    @Test
    void filesAndPageSpeakOfTheTimeThatIsAskedFor() throws Exception {
        AllocationResult result = allocate("for: 2 yr");
        AllocationFiles.write(folder, result);
        String page = Files.readString(folder.resolve("rates.html"));
        assertTrue(page.contains("Mean taking until 2028-07-01, when the bores stop: "), "the mean");
        assertTrue(
                page.contains(
                        "from 2026-07-01 until 2028-07-01 (limits are kept until 2036-07-01 all the same), no bore"),
                "the question");
        assertTrue(page.contains("Over all the time for which bores share (until 2028-07-01)"), "the table of yields");
        assertTrue(page.contains("Both changes last as long as bores share (until 2028-07-01)"), "the table of trades");
        Matcher line =
                Pattern.compile("<path class=\"season-0\" d=\"(M0[^\"]*)\"").matcher(page);
        assertTrue(line.find());
        assertTrue(
                line.group(1).matches("M0\\.00 (\\d+\\.\\d\\d)L200\\.11 \\1L200\\.11 100\\.00L1000\\.00 100\\.00"),
                line.group(1));
        List<String> rates = Files.readAllLines(folder.resolve("rates.csv"));
        assertEquals(3, rates.size(), rates::toString);
        assertTrue(rates.get(2).startsWith("2028-07-01,0"), rates::toString);
        AllocationFiles.write(folder, allocate(""));
        page = Files.readString(folder.resolve("rates.html"));
        assertTrue(page.contains("Mean taking: ") && !page.contains("2028-07-01"), "of the whole period");
        assertTrue(page.contains("from 2026-07-01 until 2036-07-01, no bore"), "the question");
    }
}
