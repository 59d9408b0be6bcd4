package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.sweep.store.StoredRun;
import org.headfall.scenarios.sweep.store.SweepStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Numbers in the sentences that a sweep ends with, beside the same counted from the rows of its store. */
class SweepAnswersToldTest {

    private static final int LOSS = 0;
    private static final int MARGIN = 2;

    @TempDir
    private Path folder;

    private String told = "";
    private List<StoredRun> rows = List.of();

    private void sweep() throws IOException {
        SweepExample.writeSmall(folder);
        Files.writeString(folder.resolve("sweep.yaml"), """
                title: Six runs
                base: scenario.yaml
                vary:
                  - {name: rate, key: bores.Town 1.rate, values: [5 L/s, 15 L/s, 25 L/s]}
                  - {name: T, key: aquifer.transmissivity, values: [100 m2/d, 300 m2/d]}
                design: full factorial
                keep:
                  - {figure: loss, at: Coolabah Spring, after: 1 yr}
                  - {figure: discharge, at: Town 1, after: 1 yr}
                ask:
                  ranking: {figure: discharge at Town 1 after 1 yr, aim: largest}
                  probability:
                    - {figure: loss at Coolabah Spring after 1 yr, above: 1 m}
                  sensitivity: [loss at Coolabah Spring after 1 yr]
                """);
        told = headfall("sweep", folder.toString()).exits(0).outInOneLine();
        rows = new ArrayList<>();
        try (SweepStore store =
                SweepStore.read(folder.resolve("results").resolve("sweep").resolve("sweep.sqlite"))) {
            store.forEach(rows::add);
        }
    }

    /** The share of runs is told of an event, whether in brackets or not. */
    private void requireShare(String event, Predicate<StoredRun> counted) {
        long share = Math.round(100.0 * rows.stream().filter(counted).count() / rows.size());
        Matcher said = Pattern.compile(Pattern.quote(event) + ": \\(?(\\d+) % of 6 runs")
                .matcher(told);
        assertTrue(said.find(), told);
        assertEquals(share, Long.parseLong(said.group(1)), told);
    }

    private double meanLoss(String rate) {
        return rows.stream()
                .filter(row -> row.inputs().contains("\"" + rate + "\""))
                .mapToDouble(row -> row.figures()[LOSS])
                .average()
                .orElseThrow();
    }

    @Test
    void areThoseOfTheStore() throws IOException {
        sweep();
        assertEquals(6, rows.size());
        assertTrue(told.contains("6 of 6 runs have figures."), told);
        // 25 L/s are 2,160 m³ a day.
        String best = "Best by the aim asked for (largest discharge at Town 1 after 1 yr): run 5 with 2160 m3/d.";
        assertTrue(told.contains(best), told);
        Path page = folder.resolve("results").resolve("sweep").resolve("sweep.html");
        String shown = Files.readString(page).replaceAll("[\\s\\u00a0]+", " ");
        assertTrue(shown.contains(best), "the page says the same");
        assertTrue(told.contains("run 5: 2160 with rate 25 L/s, T 100 m2/d"), told);
        requireShare("loss at Coolabah Spring after 1 yr above 1 m", row -> row.figures()[LOSS] > 1);
        requireShare(
                "Limit \"the spring keeps its head\" crossed at Coolabah Spring", row -> row.figures()[MARGIN] < 0);
        Matcher most = Pattern.compile(
                        "depends most on rate: ([\\d.]+) m where it is low, ([\\d.]+) m where it is high")
                .matcher(told);
        assertTrue(most.find(), told);
        assertEquals(meanLoss("5 L/s"), Double.parseDouble(most.group(1)), 1e-3);
        assertEquals(meanLoss("25 L/s"), Double.parseDouble(most.group(2)), 1e-3);
        assertTrue(meanLoss("25 L/s") > 2 * meanLoss("5 L/s"), told);
    }
}
