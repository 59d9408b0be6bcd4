package org.headfall.scenarios.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.report.Browser;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of a plan with invented figures in a real browser; skipped where chromium and its driver are not on the path. */
class PlanningPageInBrowserTest {

    private static final int NARROW = 360;
    private static final int HIGH = 740;
    private static final int CELLS = 12;

    @TempDir
    static Path folder;

    private static Browser browser;

    @BeforeAll
    static void openThePage() throws IOException {
        Path file = folder.resolve("plan.html");
        PlanningPageWriter.write(
                new PlanningPage(
                        "A plan",
                        "An invented field",
                        "Headfall",
                        List.of("Asked for: nothing."),
                        List.of(map(), curves()),
                        List.of(layouts(80), limits()),
                        List.of(),
                        List.of("Take care.")),
                file);
        browser = Browser.open(file, folder.resolve("profile"));
    }

    private static PlanningMap map() {
        double[] centres = new double[CELLS];
        Arrays.setAll(centres, i -> 400_000 + 1000 * i);
        double[] rates = new double[CELLS * CELLS];
        Arrays.setAll(rates, cell -> cell % CELLS == 0 ? Double.NaN : cell / 4.0);
        double[] none = new double[CELLS * CELLS];
        return new PlanningMap(
                centres,
                centres,
                rates,
                none,
                List.of("largest rate of a bore"),
                rates,
                rates,
                List.of(
                        new PlanningMap.Place(PlanningMap.Kind.SITE, "new site 1", "1", 405_000, 405_000),
                        new PlanningMap.Place(PlanningMap.Kind.SPRING, "Heron Spring", "", 402_000, 407_000)));
    }

    private static PlanningCurves curves() {
        double[] spacings = {50, 100, 200, 500, 1000, 2000, 5000};
        double[] costs = {130, 126, 124, 125, 128, 136, 150};
        return new PlanningCurves(
                spacings,
                List.of("Cost (per ML)"),
                List.of(
                        new PlanningCurves.Curve("line", 4, List.of(costs), 220, new double[] {124}, false),
                        new PlanningCurves.Curve("line", 2, List.of(costs), 180, new double[] {123}, false),
                        new PlanningCurves.Curve("ring", 4, List.of(costs), 300, new double[] {121}, false)));
    }

    private static PlanningTable layouts(int rows) {
        List<List<String>> lines = new ArrayList<>();
        for (int i = 0; i < rows; i++) {
            lines.add(List.of("line", String.valueOf(i), "67.08", "32.0", "34.03", "7.57"));
        }
        return new PlanningTable(
                "all",
                "All layouts",
                "spacing.csv",
                List.of(
                        "Layout",
                        "Bores",
                        "Total yield at the given lift (L/s)",
                        "Yield lost to interference (%)",
                        "Mean lift at the given rate (m)",
                        "Lift by bores of the document (m)"),
                lines);
    }

    private static PlanningTable limits() {
        return new PlanningTable(
                "effects",
                "What each site takes of each limit",
                "site-effects.csv",
                List.of("Site", "Limit", "On", "Effect of the site", "Left with all sites", "Unit"),
                List.of(List.of(
                        "new site 1",
                        "the neighbour keeps pressure (Saltbush homestead)",
                        "2037-07-01",
                        "0.118",
                        "6.705",
                        "m")));
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    @BeforeEach
    void onAScreen() {
        browser.colours("light");
        browser.size(1000, 900);
    }

    /** On a telephone nothing but tables is wider than the screen, and their heads take less than a sixth of it. */
    @Test
    void aNarrowScreenIsNotFilledByHeadsOfTables() {
        browser.size(NARROW, HIGH);
        assertEquals(NARROW, ((Number) browser.run("return document.documentElement.scrollWidth")).intValue());
        for (double height : browser.numbers(
                "return [...document.querySelectorAll('thead')].map(head => head.getBoundingClientRect().height)")) {
            assertTrue(height < HIGH / 6.0, "height of a head: " + height);
        }
    }

    /** By the widths that the browser measures, the numbers of the axis of spacings stand apart on every screen. */
    @Test
    void numbersOfAnAxisStandApart() {
        for (int width : new int[] {NARROW, 600, 1280}) {
            browser.size(width, HIGH);
            double[] gaps = browser.numbers("""
                    const context = document.createElement("canvas").getContext("2d");
                    context.font = "12px system-ui, sans-serif";
                    const axis = chart.axes[0];
                    const shown = axis._values.map((text, i) => [text, chart.valToPos(axis._splits[i], "x")]).filter(pair => pair[0]);
                    const half = text => context.measureText(text).width / 2;
                    return shown.slice(1).map(([text, at], i) => at - half(text) - (shown[i][1] + half(shown[i][0])));
                    """);
            assertTrue(gaps.length >= 3, "numbers at " + width + " px: " + gaps.length);
            for (double gap : gaps) {
                assertTrue(gap > 3, "gap at " + width + " px: " + gap);
            }
        }
    }

    /** A line of 2 and 4 bores and a ring of 4, each at its spacing of least cost; a ring of 2 was left out. */
    @Test
    void curvesOverTheNumberOfBoresShowEachAtItsSpacingOfLeastCost() {
        assertEquals("[[2,4],[123,124],[null,121]]", browser.run("return JSON.stringify(numbersChart.data)"));
        Object spacings = browser.run("""
                const show = document.getElementById("numbers-measure");
                show.value = show.options[show.options.length - 1].value;
                show.dispatchEvent(new Event("change"));
                return JSON.stringify(numbersChart.data);
                """);
        assertEquals("[[2,4],[180,220],[null,300]]", spacings);
    }

    @Test
    void longTablesStayOffPaperAndAreNamedThere() {
        String height = "return document.getElementById('all').getBoundingClientRect().height";
        assertTrue(((Number) browser.run(height)).doubleValue() > 0);
        browser.paper();
        assertEquals(0, ((Number) browser.run(height)).doubleValue());
        String said = (String) browser.run("return document.querySelector('.on-paper').innerText");
        assertTrue(said.contains("80 rows") && said.contains("spacing.csv"), said);
    }

    @Test
    void theCaptionFollowsWhatTheMapShows() {
        String choose = "const show = document.getElementById('map-quantity'); show.value = arguments[0];"
                + "show.dispatchEvent(new Event('change')); return document.getElementById('map-caption').textContent";
        assertTrue(String.valueOf(browser.run(choose, "lift")).startsWith("How far one new bore"), "lift");
        assertTrue(String.valueOf(browser.run(choose, "ruling")).contains("break first"), "ruling");
        assertTrue(String.valueOf(browser.run(choose, "rate")).startsWith("The largest steady rate"), "rate");
    }

    @Test
    void nothingBarsReadersAndTheConsoleStaysEmpty() throws IOException {
        for (String scheme : List.of("light", "dark")) {
            browser.colours(scheme);
            assertEquals(List.of(), browser.barriers(), scheme);
        }
        assertEquals(List.of(), browser.console());
    }
}
