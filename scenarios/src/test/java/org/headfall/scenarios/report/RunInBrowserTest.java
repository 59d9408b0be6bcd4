package org.headfall.scenarios.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.HeadRecords;
import org.headfall.scenarios.run.StandardOutputs;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of a real run of a small field against its files, and its what-if against other real runs. */
class RunInBrowserTest {

    private static final String DOCUMENT = """
            title: small field
            description: What do two bores do to each other and to a spring?
            datum: metres above an invented datum
            crs: local
            period: {from: 2027-01-01, for: 4 yr}
            grid:
              extent: {west: 0 km, east: 20 km, south: 0 km, north: 20 km}
              cell: 1 km
            aquifer: {transmissivity: 250 m2/d, storativity: 2e-4, top: -100 m, bottom: -200 m}
            ground: 150 m
            sealing_bed: {thickness: 60 m, vertical_conductivity: 1e-5 m/d, specific_storage: 3e-6 1/m, head_above: 150 m}
            boundaries:
              - {name: intake, side: west, fixed_head: 200 m}
            start: {steady: with existing bores}
            springs:
              - {name: Seep, at: [14.5 km, 12.5 km], outlet: 150 m, conductance: 20 m2/d}
            protected:
              - {name: homestead, at: [15 km, 4 km]}
            bores: {file: bores.csv%s}
            limits:
              - {name: spring, quantity: drawdown, at: Seep, cause: proposed bores, compared_with: without them,
                 when: ever, at_most: 20 m}
            output: {grids: yearly, bores: monthly, head_tolerance: 1 mm}
            """;

    private static final String BORES = """
            name,x (m),y (m),group,screen_radius (mm),outlet_level (m),pump_intake_level (m),quadratic_well_loss (s2/m5),rate (L/s),schedule,between_dates
            East,12000,10000,proposed,100,,60,1900,20,,
            North,10300,12400,proposed,100,,60,1900,,seasons.csv,straight lines
            Old,8000,7500,existing,100,151,,3000,3,,
            """;

    private static final String SEASONS = """
            date,rate (L/s)
            2027-01-01,5
            2027-07-01,14
            2028-01-01,5
            2028-07-01,14
            2029-01-01,5
            2029-07-01,14
            2030-01-01,5
            2031-01-01,5
            """;

    @TempDir
    static Path folder;

    private static FinishedRun run;
    private static Browser browser;

    @BeforeAll
    static void runAndOpen() throws Exception {
        run = run("run", BORES, SEASONS, "");
        browser = Browser.open(folder.resolve("run/results/report.html"), folder.resolve("profile"));
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    private static FinishedRun run(String name, String bores, String seasons, String changes)
            throws IOException, InputException {
        Path place = Files.createDirectories(folder.resolve(name));
        Files.writeString(place.resolve("bores.csv"), bores);
        Files.writeString(place.resolve("seasons.csv"), seasons);
        Files.writeString(place.resolve("changes.csv"), changes);
        String document = DOCUMENT.formatted(changes.isEmpty() ? "" : ", changes: changes.csv");
        Path scenario = Files.writeString(place.resolve("scenario.yaml"), document);
        return DocumentRun.into(scenario, place.resolve("results"), StandardOutputs.all(List.of()));
    }

    /** Remarks, clauses and shares by cause are read without scrolling a table sideways. */
    @Test
    void tablesOfARunAreNotCutOnAWideScreen() {
        browser.size(1280, 900);
        assertEquals(
                List.of(),
                browser.run(
                        "return [...document.querySelectorAll('.scroll')].filter(box => box.scrollWidth > box.clientWidth)"
                                + ".map(box => box.getAttribute('aria-label'))"));
        browser.size(1000, 900);
    }

    @Test
    void theMapReadsWhatTheFileHolds() throws IOException {
        try (HeadRecords records = new HeadRecords(folder.resolve("run/results"))) {
            assertEquals(5, records.days().length);
            for (int date = 0; date < 5; date++) {
                double[] shown = browser.numbers("return Array.from(field.heads[arguments[0]])", date);
                double[] stored = records.head(date);
                for (int cell = 0; cell < stored.length; cell++) {
                    assertEquals(stored[cell], shown[cell], 0.0026, "cell " + cell + " at date " + date);
                }
            }
        }
    }

    /** Heads at all stations on all days at changed rates, as the page finds them and as a run does. */
    private static void assertSameHeads(FinishedRun other, double tolerance) {
        for (int station = 0; station < other.description().stations().size(); station++) {
            String name = other.description().stations().get(station).name();
            double[] shown =
                    browser.numbers("return Array.from(headUnder(arguments[0], whatIf.result.drawdown))", station);
            double[] computed = other.recording().series().get(station).head();
            assertEquals(computed.length, shown.length);
            // The state on the first day is that before any change.
            for (int i = 1; i < shown.length; i++) {
                assertEquals(
                        computed[i],
                        shown[i],
                        tolerance,
                        name + " on day " + other.recording().days()[i]);
            }
        }
    }

    @BeforeEach
    void backToTheRun() {
        browser.run("document.getElementById('what-if-reset').click()");
    }

    @Test
    void unchangedRatesChangeNothing() {
        assertSameHeads(run, 0.003);
    }

    @Test
    void aSliderGivesTheHeadsOfARealRun() throws Exception {
        FinishedRun other = run(
                "slider",
                BORES.replace("1900,20,", "1900,12,"),
                SEASONS.replace(",14", ",21").replace(",5\n", ",7.5\n"),
                "");
        browser.run("whatIf.changes[0].factor = 0.6; whatIf.changes[1].factor = 1.5; recompute()");
        assertSameHeads(other, 0.01);
        double worst = ((Number) browser.run(
                        "return judge(report.whatIf.limits[0], whatIf.changes, whatIf.result.drawdown).worst"))
                .doubleValue();
        double expected = ((org.headfall.scenarios.limits.Outcome.Holds)
                        other.limits().get(0).outcome())
                .worst()
                .value();
        assertEquals(expected, worst, 0.01);
    }

    @Test
    void theSavedRatesCanBeReadAndGiveTheSameHeads() throws Exception {
        browser.run("const day = dayOfIso('2029-01-01');"
                + "whatIf.changes[0] = { factor: 0, added: 0, from: day };"
                + "whatIf.changes[2] = { factor: 2, added: 0, from: day }; recompute()");
        String saved =
                (String) browser.run("return whatIfChanges().map(l => l.map(csvField).join(',')).join('\\r\\n')");
        assertTrue(saved.contains("East,2029-01-01,,off,"), saved);
        assertTrue(saved.contains("Old,2029-01-01,6.0000,,"), saved);
        assertSameHeads(run("saved", BORES, SEASONS, saved), 0.01);
    }

    @Test
    void theConsoleStaysEmpty() {
        assertEquals(List.of(), browser.console());
    }
}
