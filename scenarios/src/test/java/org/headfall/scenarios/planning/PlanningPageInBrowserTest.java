package org.headfall.scenarios.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
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
        rates[1] = 0;
        double[] ruling = new double[CELLS * CELLS];
        ruling[1] = 1;
        return new PlanningMap(
                centres,
                centres,
                rates,
                ruling,
                List.of("largest rate of a bore", "distance to springs"),
                Arrays.stream(rates).map(rate -> 2 * rate).toArray(),
                Arrays.stream(rates).map(rate -> 10 * rate).toArray(),
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
            double[] rim = browser.numbers("""
                    const context = document.createElement("canvas").getContext("2d"), values = chart.axes[0]._values;
                    context.font = "12px system-ui, sans-serif";
                    const at = chart.bbox.left / devicePixelRatio + chart.valToPos(chart.axes[0]._splits.at(-1), "x");
                    return [chart.width - at - context.measureText(values.at(-1)).width / 2, values.at(-1).length];
                    """);
            assertTrue(rim[0] > 0 && rim[1] > 0, "the last number at " + width + " px: " + Arrays.toString(rim));
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

    private static void press(String key, boolean shift, int times) {
        for (int i = 0; i < times; i++) {
            browser.run(
                    "document.getElementById('map').dispatchEvent("
                            + "new KeyboardEvent('keydown', {key: arguments[0], shiftKey: arguments[1]}))",
                    key,
                    shift);
        }
    }

    /** Sends an event of the mouse at the centre of a cell, some pixels to the right of it. */
    private static void mouse(String type, int column, int row, int right) {
        double[] at = browser.numbers("""
                const canvas = document.getElementById("map");
                canvas.scrollIntoView({block: "center"});
                const box = canvas.getBoundingClientRect(), [x, y] = toPixel(grid.x[arguments[0]], grid.y[arguments[1]]);
                return [box.left + x * box.width / view.width, box.top + y * box.height / view.height];
                """, column, row);
        browser.driver()
                .executeCdpCommand(
                        "Input.dispatchMouseEvent",
                        Map.of(
                                "type",
                                type,
                                "x",
                                at[0] + right,
                                "y",
                                at[1],
                                "button",
                                type.equals("mouseMoved") && right == 0 ? "none" : "left",
                                "buttons",
                                type.equals("mouseReleased") || (right == 0 && type.equals("mouseMoved")) ? 0 : 1,
                                "clickCount",
                                type.equals("mouseMoved") ? 0 : 1));
    }

    /** By the data: cell (column, row) allows (12 row + column) / 4 L/s, lifts twice that and takes ten times that; column 0 is no aquifer. */
    @Test
    void arrowKeysReadCellAfterCell() {
        press("ArrowLeft", true, 2);
        press("ArrowDown", true, 2);
        assertEquals("Easting 400.00 km, northing 400.00 km: no aquifer", browser.text("map-reading"));
        press("ArrowLeft", false, 1);
        assertEquals("Easting 400.00 km, northing 400.00 km: no aquifer", browser.text("map-reading"));
        press("ArrowRight", false, 1);
        assertEquals(
                "Easting 401.00 km, northing 400.00 km: no new bore: distance to springs", browser.text("map-reading"));
        press("ArrowRight", false, 3);
        press("ArrowUp", false, 5);
        assertEquals(
                "Easting 404.00 km, northing 405.00 km: up to 16.0 L/s, decided by: largest rate of a bore; lift 32.0 m, 160 kWh/ML",
                browser.text("map-reading"));
        press("ArrowRight", false, 1);
        assertTrue(
                browser.text("map-reading").endsWith("kWh/ML. Here: new site 1 (chosen site)"),
                browser.text("map-reading"));
        press("ArrowUp", true, 1);
        press("ArrowRight", true, 1);
        assertTrue(
                browser.text("map-reading").startsWith("Easting 411.00 km, northing 411.00 km: up to 35.8 L/s")
                        || browser.text("map-reading")
                                .startsWith("Easting 411.00 km, northing 411.00 km: up to 35.7 L/s"),
                browser.text("map-reading"));
    }

    @Test
    void thePointerReadsTheCellUnderIt() {
        mouse("mouseMoved", 8, 3, 0);
        String reading =
                "Easting 408.00 km, northing 403.00 km: up to 11.0 L/s, decided by: largest rate of a bore; lift 22.0 m, 110 kWh/ML";
        assertEquals(reading, browser.text("map-reading"));
        mouse("mouseMoved", 2, 7, 0);
        assertEquals(
                "Easting 402.00 km, northing 407.00 km: up to 21.5 L/s, decided by: largest rate of a bore; lift 43.0 m, 215 kWh/ML."
                        + " Here: Heron Spring (spring)",
                browser.text("map-reading"));
    }

    /** A drag takes the ground with it, so the cell under the pointer stays; keys zoom, and the button shows the whole again. */
    @Test
    void draggingAndZoomingMoveTheMapAndNotTheReading() {
        String where = "return [view.centre[0], view.centre[1], view.metresPerPixel]";
        double[] whole = browser.numbers(where);
        mouse("mouseMoved", 8, 3, 0);
        String reading = browser.text("map-reading");
        mouse("mousePressed", 8, 3, 0);
        mouse("mouseMoved", 8, 3, 80);
        double[] dragged = browser.numbers(where);
        assertEquals(whole[0] - 80 * whole[2], dragged[0], 2 * whole[2]);
        assertEquals(whole[1], dragged[1], 2 * whole[2]);
        mouse("mouseReleased", 8, 3, 0);
        mouse("mouseMoved", 8, 3, 0);
        assertEquals(reading, browser.text("map-reading"));
        press("+", false, 1);
        assertEquals(0.7 * whole[2], browser.numbers(where)[2], 1e-9 * whole[2]);
        press("-", false, 1);
        assertEquals(whole[2], browser.numbers(where)[2], 1e-9 * whole[2]);
        browser.run("document.getElementById('map-whole').click()");
        double[] again = browser.numbers(where);
        assertEquals(whole[0], again[0], 1e-6);
        assertEquals(whole[1], again[1], 1e-6);
    }

    /** Coordinates are written as in texts; a place is here only in its own cell. */
    @Test
    void aCellIsReadWithThePlacesInItAndNearIt() {
        browser.run("zoom(30); readCell(5, 5)");
        String reading = browser.text("map-reading");
        assertTrue(reading.startsWith("Easting 405.00 km, northing 405.00 km: "), reading);
        assertTrue(
                reading.contains("Here: new site 1 (chosen site). Near: Heron Spring (spring), 3.6 km away"), reading);
        browser.run("readCell(6, 5)");
        reading = browser.text("map-reading");
        assertTrue(reading.contains(". Near: new site 1 (chosen site), 1.0 km away"), reading);
        assertTrue(!reading.contains("Here"), reading);
        browser.run("lookAtWhole(); readCell(6, 5)");
        assertTrue(!browser.text("map-reading").contains("Near"), browser.text("map-reading"));
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
