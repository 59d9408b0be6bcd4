package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.report.Browser;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of a made-up allocation in a real browser; skipped where chromium and its driver are not on the path. */
class AllocationPageInBrowserTest {

    private static final int NARROW = 360;

    @TempDir
    static Path folder;

    private static Browser browser;

    @BeforeAll
    static void open() throws IOException {
        AllocationFiles.write(folder, InventedAllocation.result(true));
        browser = Browser.open(folder.resolve("rates.html"), folder.resolve("profile"));
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

    private static void press(String id, String key) {
        browser.run(
                "document.getElementById(arguments[0]).dispatchEvent(new KeyboardEvent('keydown', {key: arguments[1]}))",
                id,
                key);
    }

    /** Where a place of the map is in the window. */
    private static double[] inTheWindow(int place) {
        return browser.numbers("""
                const place = plan.rates.places[arguments[0]], canvas = document.getElementById("map");
                canvas.scrollIntoView({block: "center"});
                const box = canvas.getBoundingClientRect(), [x, y] = toPixel(place.x, place.y);
                return [box.left + x * box.width / view.width, box.top + y * box.height / view.height];
                """, place);
    }

    private static void point(int place) {
        double[] at = inTheWindow(place);
        browser.driver()
                .executeCdpCommand("Input.dispatchMouseEvent", Map.of("type", "mouseMoved", "x", at[0], "y", at[1]));
    }

    private static void touch(int place) {
        double[] at = inTheWindow(place);
        browser.driver()
                .executeCdpCommand(
                        "Input.dispatchTouchEvent",
                        Map.of("type", "touchStart", "touchPoints", List.of(Map.of("x", at[0], "y", at[1]))));
        browser.driver()
                .executeCdpCommand("Input.dispatchTouchEvent", Map.of("type", "touchEnd", "touchPoints", List.of()));
    }

    /** Stations from west to east: the spring, the evil bore, the bore that rests, the old one, the corner of the fence. */
    @Test
    void arrowKeysReadPlaceAfterPlace() {
        press("map", "ArrowRight");
        for (int i = 0; i < 9; i++) {
            press("map", "ArrowLeft");
        }
        String reading = browser.text("map-reading");
        assertTrue(reading.startsWith("Lignum Spring (spring): spring <keeps> (Lignum Spring): left 0.002 m"), reading);
        assertTrue(reading.contains("has to give way"), reading);
        press("map", "ArrowRight");
        reading = browser.text("map-reading");
        assertTrue(reading.startsWith(InventedAllocation.EVIL + " (bore): 1.500 L/s, 47.34 ML/yr on average"), reading);
        press("map", "ArrowRight");
        reading = browser.text("map-reading");
        assertTrue(reading.startsWith("Rest, \"2\" (bore that rests): rests."), reading);
    }

    @Test
    void pointerAndTouchReadPlaces() {
        point(4);
        String reading = browser.text("map-reading");
        assertTrue(reading.startsWith("Fence corner (protected point): fence (Fence corner): left 6.065 m"), reading);
        touch(3);
        reading = browser.text("map-reading");
        assertTrue(reading.startsWith("Lignum Spring (spring)"), reading);
    }

    /** Each place has its name, on a telephone too. */
    @Test
    void namesAreThereOnEveryScreen() {
        for (int width : new int[] {NARROW, 1000}) {
            browser.size(width, 740);
            double[] missing = browser.numbers("""
                    const kept = CanvasRenderingContext2D.prototype.fillText, written = [];
                    CanvasRenderingContext2D.prototype.fillText = function(text) { written.push(text); };
                    drawMap();
                    CanvasRenderingContext2D.prototype.fillText = kept;
                    return [plan.rates.places.length, plan.rates.places.filter(place => !written.includes(shortLabel(place))).length];
                    """);
            assertEquals(5, missing[0]);
            assertEquals(0, missing[1], "names missing at " + width + " px");
        }
    }

    /** On paper the map has another shape and other colours: all places stay on it, and its key follows. */
    @Test
    void paperShowsAllPlacesAndAKeyInItsColours() {
        browser.paper();
        double[] found = browser.numbers("""
                const off = plan.rates.places.map(place => toPixel(place.x, place.y))
                  .filter(([x, y]) => x < 0 || y < 0 || x > view.width || y > view.height).length;
                const corners = [toPixel(grid.edgesX[0], grid.edgesY[0]), toPixel(grid.edgesX.at(-1), grid.edgesY.at(-1))];
                const cut = corners.filter(([x, y]) => x < -1 || y < -1 || x > view.width + 1 || y > view.height + 1).length;
                const canvas = document.querySelector("#map-symbols li:last-child canvas");
                const pixels = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height).data;
                const colours = [];
                for (let i = 0; i < pixels.length; i += 4) if (pixels[i + 3] === 255) colours.push(Math.max(pixels[i], pixels[i + 1], pixels[i + 2]));
                return [off, cut, colours.length, Math.max(...colours)];
                """);
        assertEquals(0, found[0], "places off the map");
        assertEquals(0, found[1], "corners off the map");
        assertTrue(found[2] > 0, "the key of limits that give way");
        assertEquals(0, found[3], "black on paper");
    }

    @Test
    void areasOfCirclesGoAsRates() {
        double[] radii = browser.numbers("return [radiusOf(0.5), radiusOf(2), radiusOf(0)]");
        assertEquals(2, radii[1] / radii[0], 1e-9);
        assertEquals(0, radii[2]);
    }

    /** The season from 1 October 2027 on is the second stretch: 2 L/s, as in the table of rates. */
    @Test
    void arrowKeysReadRatesOverTime() {
        for (int i = 0; i < 99; i++) {
            press("steps", "ArrowLeft");
        }
        press("steps", "ArrowRight");
        String cell =
                (String) browser.run("return document.querySelectorAll('#rates tbody tr')[1].cells[1].textContent");
        assertEquals("2.000000", cell);
        String reading = browser.text("steps-reading");
        assertTrue(
                reading.startsWith("From 2027-10-01 until 2028-04-01: " + InventedAllocation.EVIL + " 2.000000 L/s"),
                reading);
    }

    @Test
    void namesRunNothingAndNothingIsFetched() throws IOException {
        assertEquals(null, browser.run("return window.hacked || null"));
        assertEquals(0L, browser.run("return document.querySelectorAll('img').length"));
        assertEquals(0L, browser.run("return performance.getEntriesByType('resource').length"));
        assertEquals(List.of(), browser.console());
    }

    @Test
    void fitsATelephoneAndBarsNoReaders() throws IOException {
        browser.size(NARROW, 740);
        assertEquals(NARROW, ((Number) browser.run("return document.documentElement.scrollWidth")).intValue());
        for (String scheme : List.of("light", "dark")) {
            browser.colours(scheme);
            assertEquals(List.of(), browser.barriers(), scheme);
        }
    }
}
