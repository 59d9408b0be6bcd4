package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Limits of the volume of a water year where the run has no whole one. */
class VolumeLimitsTest {

    private static final String DOCUMENT = """
            title: One bore
            datum: an invented datum
            crs: local
            period: {from: FROM, until: UNTIL}
            grid: {extent: {west: 0 km, east: 20 km, south: 0 km, north: 20 km}, cell: 1 km}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-3, top: -50 m, bottom: -150 m}
            ground: 100 m
            boundaries: [{name: west, side: west, fixed_head: 120 m}]
            bores:
              - {name: bore, at: [10.5 km, 10.5 km], group: proposed, screen_radius: 0.1 m, rate: 1 ML/d}
            accounts: {water_year: 1 July}
            limits:
              - {name: volume, quantity: volume, at: bore, when: WHEN, at_most: MOST ML}
            start: {steady: without bores}
            output: {report_after: [30 d]}
            """;

    @TempDir
    Path folder;

    private Outcome outcome(String from, String until, String when, String most) throws InputException, IOException {
        return outcome(DOCUMENT, from, until, when, most);
    }

    private Outcome outcome(String document, String from, String until, String when, String most)
            throws InputException, IOException {
        String text = document.replace("FROM", from)
                .replace("UNTIL", until)
                .replace("WHEN", when)
                .replace("MOST", most);
        Path written = Files.writeString(folder.resolve("scenario.yaml"), text);
        RunPlan plan = RunPlanner.plan(ScenarioReader.read(written, FileReach.FOLDER_OF_DOCUMENT), "Headfall test", 1);
        return new ScenarioRun(plan, List.of(), (stage, fraction) -> {})
                .into(folder.resolve("results"), true)
                .limits()
                .get(0)
                .outcome();
    }

    /** October to April are 212 days of the water year. */
    @Test
    void aPartOfAYearDoesNotShowThatTheYearHolds() throws InputException, IOException {
        Outcome outcome = outcome("2026-10-01", "2027-05-01", "ever", "300");
        Outcome.Worst worst = outcome.worstIfAny().orElseThrow();
        assertEquals("undecided", outcome.words());
        assertEquals(212, worst.value(), 1e-6);
        assertEquals("Part of the year only: water year from 2026-07-01.", worst.note());
    }

    @Test
    void whatAPartOfAYearTakesTooMuchIsTooMuchForTheYear() throws InputException, IOException {
        assertEquals(
                "crossed", outcome("2026-10-01", "2027-05-01", "ever", "200").words());
    }

    @Test
    void aFewDaysAreNoYear() throws InputException, IOException {
        Outcome outcome = outcome("2026-07-01", "2028-07-01", "within 60 d", "400");
        assertEquals("undecided", outcome.words());
        assertTrue(outcome.worstIfAny().orElseThrow().note().startsWith("Part of the year only"), outcome::toString);
    }

    /** A whole year between two parts decides, and the parts are named. */
    @Test
    void aWholeYearAmongPartsDecides() throws InputException, IOException {
        Outcome outcome = outcome("2026-10-01", "2028-09-01", "ever", "400");
        Outcome.Worst worst = outcome.worstIfAny().orElseThrow();
        assertEquals("holds", outcome.words());
        assertEquals(366, worst.value(), 1e-6);
        assertEquals("Part of the year only: water year from 2026-07-01 and from 2028-07-01.", worst.note());
    }

    /**
     * The limit begins as the second water year does, of 366 days. What the first took, twice as much a day, is none of it; all
     * of a year counts as soon as the limit begins a day earlier.
     */
    @Test
    void aYearThatEndsAsTheLimitBeginsDoesNotCount() throws InputException, IOException {
        String changing =
                DOCUMENT.replace("rate: 1 ML/d}", "rate: 2 ML/d, changes: [{from: 2027-07-01, rate: 1 ML/d}]}");
        Outcome after = outcome(changing, "2026-07-01", "2028-07-01", "after 365 d", "400");
        assertEquals("holds", after.words());
        assertEquals(366, after.worstIfAny().orElseThrow().value(), 1e-6);
        assertEquals("", after.worstIfAny().orElseThrow().note());
        Outcome before = outcome(changing, "2026-07-01", "2028-07-01", "after 364 d", "400");
        assertEquals("crossed", before.words());
        assertEquals(730, before.worstIfAny().orElseThrow().value(), 1e-6);
    }
}
