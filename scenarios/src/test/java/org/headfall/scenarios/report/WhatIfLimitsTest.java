package org.headfall.scenarios.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.run.StandardOutputs;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What-if of the example of limits, which has a hot bore that flows by itself, against real runs: every limit that the
 * page judges has to come out as a run judges it. Skipped where there is no browser.
 */
class WhatIfLimitsTest {

    private static final Path EXAMPLE = Path.of("examples", "limits");

    /** A few millimetres: the page keeps heads to 0.25 mm and meets springs and flowing bores on some 200 days. */
    private static final double CLOSE = 0.002;

    /** Twice that, in five years (m/yr). */
    private static final double CLOSE_RATE = 2 * CLOSE / 5;

    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

    @TempDir
    static Path folder;

    private static FinishedRun run;
    private static Browser browser;

    @BeforeAll
    static void runAndOpen() throws Exception {
        run = run("run", "rate: 14 L/s");
        browser = Browser.open(folder.resolve("run/results/report.html"), folder.resolve("profile"));
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    /** The example with another rate of both town bores, and limits of decline rate and class that have a cause. */
    private static FinishedRun run(String name, String rate) throws IOException, InputException {
        Path place = Files.createDirectories(folder.resolve(name));
        try (Stream<Path> files = Files.list(EXAMPLE)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, place.resolve(file.getFileName()));
            }
        }
        Path document = place.resolve("scenario.yaml");
        Files.writeString(
                document,
                Files.readString(document).replace("rate: 14 L/s", rate).replace("limits:\n", """
                limits:
                  - {name: decline by the town, quantity: decline rate, over: 5 yr, at: Watch Bore, cause: Wirra Shire,
                     when: ever, at_most: 0.1 m/yr}
                  - {name: all taking, quantity: drawdown, at: [homestead, Far Seep], cause: everyone,
                     compared_with: without them, when: ever, at_most: 9 m}
                """));
        return DocumentRun.into(document, place.resolve("results"), StandardOutputs.all(List.of()));
    }

    @Test
    void withNothingChangedLimitsComeOutAsInTheRun() {
        browser.run("document.getElementById('what-if-reset').click()");
        assertOutcomesOf(run);
        String shown = browser.text("what-if-limits");
        List<Outcome.Crossed> crossed = run.limits().stream()
                .filter(result -> result.limit().name().equals("neighbours keep their lift"))
                .map(LimitResult::outcome)
                .filter(Outcome.Crossed.class::isInstance)
                .map(Outcome.Crossed.class::cast)
                .toList();
        assertFalse(crossed.isEmpty(), "no date to look for");
        for (Outcome.Crossed one : crossed) {
            String date = run.description().calendar().at(one.firstDay()).format(DATE);
            assertTrue(shown.contains("crossed from " + date), shown);
        }
    }

    @Test
    void halfOfTheRatesGivesTheOutcomesOfARealRun() throws Exception {
        browser.run("whatIf.changes[0].factor = 0.5; whatIf.changes[1].factor = 0.5; recompute()");
        assertOutcomesOf(run("half", "rate: 7 L/s"));
    }

    @Test
    void limitsThatOnlyARunCanJudgeAreNamedWithTheReason() {
        String named = browser.text("what-if-not-judged");
        assertTrue(named.contains("springs keep their head, at Far Seep: It counts on after the run"), named);
        assertTrue(named.contains("border, at border.geojson: It holds for a part of the map"), named);
        assertEquals(
                run.limits().size(),
                ((Number) browser.run("return report.whatIf.limits.length + report.whatIf.notJudged.length"))
                        .intValue());
    }

    private static void assertOutcomesOf(FinishedRun expected) {
        List<?> judged = (List<?>) browser.run("return report.whatIf.limits.map(condition => ({ place: condition.limit,"
                + " ...judge(condition, whatIf.changes, whatIf.result.drawdown) }))");
        assertEquals(11, judged.size(), browser.text("what-if-not-judged"));
        for (Object one : judged) {
            Map<?, ?> page = (Map<?, ?>) one;
            LimitResult result = expected.limits().get(number(page, "place").intValue());
            String name = result.limit().name() + " at " + result.limit().station();
            Outcome.Worst worst = result.outcome().worstIfAny().orElseThrow();
            double close = result.limit().quantity().unit().equals("m/yr") ? CLOSE_RATE : CLOSE;
            assertEquals(worst.value(), number(page, "worst").doubleValue(), close, name);
            assertEquals(worst.day(), number(page, "on").doubleValue(), 0.01, name + ": day of the worst");
            if (Math.abs(worst.margin()) > worst.error() + close) {
                assertEquals(result.outcome().words(), page.get("state"), name);
            }
            if (result.outcome() instanceof Outcome.Crossed crossed) {
                // Where drawdown grows by 2 cm a year a month is 2 mm.
                assertEquals(
                        crossed.firstDay(), number(page, "crossed").doubleValue(), 30, name + ": first day beyond");
            }
        }
    }

    private static Number number(Map<?, ?> of, String name) {
        return (Number) of.get(name);
    }
}
