package org.headfall.scenarios.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.headfall.scenarios.findings.AttributedChange;
import org.headfall.scenarios.findings.AttributionSummary;
import org.headfall.scenarios.findings.ShareBase;
import org.headfall.scenarios.report.content.ReportContent;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The page of an invented field in a real browser; skipped where chromium and its driver are not on the path. */
class BrowserPageTest {

    private static final long SEED = 20_260_702;
    private static final ReportContent CONTENT = InventedField.content(SEED, 160, 90);
    private static final Path PICTURES = Path.of("target", "report-pictures");

    @TempDir
    static Path folder;

    private static Browser browser;

    @BeforeAll
    static void openThePage() throws IOException {
        Path page = folder.resolve("report.html");
        ReportWriter.write(CONTENT, page);
        browser = Browser.open(page, folder.resolve("profile"));
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    @Test
    void theConsoleStaysEmpty() {
        browser.driver().findElement(By.id("map-whole")).click();
        browser.driver().findElement(By.id("map-in")).click();
        assertEquals(List.of(), browser.console());
    }

    @Test
    void theReadOutEqualsTheData() {
        for (int date = 0; date < CONTENT.map().heads().size(); date++) {
            for (int[] cell : new int[][] {{0, 0}, {63, 42}, {64, 43}, {159, 89}, {17, 71}}) {
                String reading = (String) browser.run(
                        "chooseDate(arguments[0]); read(field.x[arguments[1]], field.y[arguments[2]]);"
                                + "return document.getElementById('map-reading').textContent",
                        date,
                        cell[0],
                        cell[1]);
                double head = InventedField.head(CONTENT, date, cell[0], cell[1]);
                double drawdown = InventedField.head(CONTENT, 0, cell[0], cell[1]) - head;
                assertEquals(head, number(reading, "head "), 0.0101, () -> "seed " + SEED + ": " + reading);
                assertEquals(drawdown, number(reading, "drawdown "), 0.0101, () -> "seed " + SEED + ": " + reading);
            }
        }
    }

    /** At a bore the section ends at the head at its wall, however much higher the cells around stand. */
    @Test
    void theSectionRunsDownToTheWallOfABore() {
        var site = CONTENT.sites().get(0);
        var heads = CONTENT.hydrographs().get(0).aquiferHead();
        double found = ((Number) browser.run(
                        "const kept = section.line, s = report.sites[0]; section.line = { name: 'x', fromX: s.x - 5000, fromY: s.y,"
                                + " toX: s.x + 5000, toY: s.y }; const last = field.dates.length - 1, shown = map.date; map.date = last;"
                                + " const at = sectionSamples(301).find(p => Math.abs(p.distance - 5000) < 1e-6).shown;"
                                + " section.line = kept; map.date = shown; return at"))
                .doubleValue();
        assertEquals(heads[heads.length - 1], found, 0.006, site.name());
    }

    @Test
    void theMapOpensWithThePlaceWhereALimitIsCrossed() {
        boolean inside =
                (boolean) browser.run("lookAtAnswer(); const s = siteNamed('Wattle Springs'), p = toPixel(s.x, s.y);"
                        + " return p[0] > 0 && p[1] > 0 && p[0] < map.width && p[1] < map.height");
        assertTrue(inside, "the spring lies beside the map");
    }

    private static double number(String reading, String name) {
        String rest = reading.substring(reading.indexOf("\u00b7 " + name) + name.length() + 2);
        return Double.parseDouble(rest.substring(0, rest.indexOf("\u00a0m")).replace('\u2212', '-'));
    }

    @Test
    void keysMoveTheReadOutAndChooseASite() {
        WebElement map = browser.driver().findElement(By.id("map"));
        browser.run("lookAtWhole(); map.cursor = null; drawMap()");
        map.sendKeys(Keys.ARROW_RIGHT);
        String first = browser.text("map-reading");
        map.sendKeys(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
        assertTrue(first.contains("head above ground"), first);
        assertNotEquals(first, browser.text("map-reading"));
        String site = CONTENT.sites().get(3).name();
        browser.run("map.cursor = [report.sites[3].x, report.sites[3].y]");
        map.sendKeys(Keys.ENTER);
        assertTrue(browser.text("hydrograph-caption").startsWith(site), browser.text("hydrograph-caption"));
    }

    /** By tabulator, arrows and Enter alone: date, section drawn on the map, rate of a bore. */
    @Test
    void everythingCanBeReachedByKeys() {
        WebElement date = browser.driver().findElement(By.id("map-date"));
        browser.run("chooseDate(5); document.getElementById('map-date').focus()");
        date.sendKeys(Keys.ARROW_LEFT);
        assertEquals("1 July 2046", browser.text("map-date-words"));
        browser.driver().findElement(By.id("section-draw")).sendKeys(Keys.ENTER);
        WebElement map = browser.driver().switchTo().activeElement();
        assertEquals("map", map.getDomAttribute("id"));
        map.sendKeys(Keys.ENTER, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ENTER);
        assertTrue(
                browser.text("section-caption").startsWith("line drawn by the reader"),
                browser.text("section-caption"));
        WebElement slider = browser.driver().findElement(By.cssSelector("#what-if-bores tbody tr:nth-child(2) input"));
        slider.sendKeys(Keys.ARROW_LEFT);
        assertTrue(browser.text("what-if-answer").startsWith("With one bore changed"), browser.text("what-if-answer"));
        browser.driver().findElement(By.id("what-if-reset")).sendKeys(Keys.ENTER);
        assertTrue(browser.text("what-if-answer").startsWith("Rates as in the run"), browser.text("what-if-answer"));
    }

    /** Nothing in the page takes the focus and keeps it. */
    @Test
    void theTabulatorGoesThroughThePage() {
        browser.run("document.activeElement.blur(); window.scrollTo(0, 0)");
        WebElement body = browser.driver().findElement(By.tagName("body"));
        body.sendKeys(Keys.TAB);
        long different = java.util.stream.IntStream.range(0, 40)
                .mapToObj(i -> {
                    browser.driver().switchTo().activeElement().sendKeys(Keys.TAB);
                    return browser.driver().switchTo().activeElement();
                })
                .distinct()
                .count();
        assertEquals(40, different);
    }

    @Test
    void flowsAndHeightsChangeTheirUnitsEverywhere() {
        assertEquals("L/s", column("artesian-head", "Flow before").get(0));
        browser.run("chooseUnit('flow', 'ML/d'); chooseUnit('height', 'kPa')");
        try {
            assertEquals("ML/d", column("artesian-head", "Flow before").get(0));
            assertTrue(column("artesian-head", "Flow before").contains("0.120"), "120 m3/d in ML/d");
            double loss = CONTENT.artesianHeads().get(0).losses().get(0).loss();
            // 9.79 kPa/m: water of 20 °C, 998.2 kg/m3 (Kell 1975), times 9.80665 m/s2.
            String shown = String.format(Locale.ROOT, "%.1f", loss * 9.79);
            assertTrue(column("artesian-head", "Loss").contains(shown), shown);
            assertTrue(browser.text("map-scale").contains("(kPa)"), browser.text("map-scale"));
            assertTrue(browser.text("answer").contains("kPa"), browser.text("answer"));
            assertEquals("m", column("sites", "Ground level").get(0), "a level is no pressure");
        } finally {
            browser.run("chooseUnit('flow', 'L/s'); chooseUnit('height', 'm')");
        }
    }

    /** Unit and texts of the column of a table whose heading begins so. */
    private static List<?> column(String table, String heading) {
        return (List<?>) browser.run(
                "const t = document.getElementById(arguments[0]), heads = [...t.tHead.rows[0].cells];"
                        + "const i = heads.findIndex(h => h.textContent.startsWith(arguments[1]));"
                        + "return [heads[i].querySelector('.unit').textContent,"
                        + " ...[...t.tBodies[0].rows].map(r => r.cells[i].textContent)]",
                table,
                heading);
    }

    @Test
    void tablesSortByValue() {
        Object ordered = browser.run("const t = document.getElementById('artesian-head');"
                + "const i = [...t.tHead.rows[0].cells].findIndex(h => h.textContent.startsWith('Loss'));"
                + "t.tHead.rows[0].cells[i].querySelector('button').click();"
                + "const v = [...t.tBodies[0].rows].map(r => +r.cells[i].dataset.value);"
                + "return v.length > 5 && v.every((x, k) => k === 0 || v[k - 1] <= x)");
        assertEquals(true, ordered);
    }

    /** Rates are constant from the first day on, so drawdown by a bore times 0.4 is what is left of it. */
    @Test
    void aRateTimesAFactorTakesAsMuchOfItsDrawdown() {
        double[] run = heads();
        browser.run("whatIf.changes[0].factor = 0.4; whatIf.changes[5].factor = 0; recompute()");
        double[] changed = heads();
        browser.run("document.getElementById('what-if-reset').click()");
        for (int site = 0; site < run.length; site++) {
            double expected = run[site]
                    + 0.6 * InventedField.drawdownBy(CONTENT, 0, site, 600)
                    + InventedField.drawdownBy(CONTENT, 5, site, 600);
            assertEquals(
                    expected, changed[site], 0.01, CONTENT.sites().get(site).name());
        }
        assertArrayEquals(run, heads(), 1e-9);
    }

    /** Heads at all sites at the end, changed rates counted in. */
    private static double[] heads() {
        return browser.numbers("return report.whatIf.stations.map((name, i) => "
                + "headUnder(i, whatIf.result.drawdown)[responses.days.length - 1])");
    }

    /** Parts are those of the content, and as shown they add up to the whole as shown, to its last digit, in every unit. */
    @Test
    void partsOfTheMapOfCausesAddUpToTheWholeAsShown() {
        try {
            for (String units : List.of("L/s m", "ML/yr kPa")) {
                String[] unit = units.split(" ", -1);
                browser.run("chooseUnit('flow', arguments[0]); chooseUnit('height', arguments[1])", unit[0], unit[1]);
                for (int date = 0; date < CONTENT.attribution().size(); date++) {
                    AttributionSummary summary = CONTENT.attribution().get(date);
                    summary.drawdown().forEach(partsAddUp("drawdown", date, 5e-7));
                    summary.loss().forEach(partsAddUp("loss", date, 4.33e-5));
                }
            }
        } finally {
            browser.run("chooseUnit('flow', 'L/s'); chooseUnit('height', 'm')");
        }
    }

    private static Consumer<AttributedChange> partsAddUp(String quantity, int date, double rounding) {
        return change -> {
            double[] found = browser.numbers(
                    "taken.quantity = arguments[0]; taken.date = arguments[1];"
                            + "taken.place = report.attribution.places.indexOf(arguments[2]);"
                            + "const f = partsOfTaken(), parts = [...f.bores, f.drift, f.rest];"
                            + "const d = f.decimals, sum = k => parts.reduce((s, p) => s + p[k], 0);"
                            + "return [f.all.amount, roundTo(sum('shown') - f.all.shown, d),"
                            + " f.whyNot ? 100 : roundTo(sum('share'), 1), f.drift.amount, f.whyNot ? 1 : 0,"
                            + " ...f.bores.slice().sort((a, b) => a.bore - b.bore).map(p => p.amount)]",
                    quantity,
                    date,
                    change.place());
            String where = quantity + " at " + change.place() + " at date " + date;
            assertEquals(change.whole(), found[0], rounding, where);
            assertEquals(0, found[1], 1e-9, where);
            assertEquals(100, found[2], 1e-9, where);
            assertEquals(change.drift(), found[3], rounding, where);
            double least = quantity.equals("loss") ? ShareBase.LEAST_LOSS : ShareBase.LEAST_DRAWDOWN;
            assertEquals(change.shares(least).sense() == ShareBase.Sense.SOUND ? 0 : 1, found[4], where);
            for (int bore = 0; bore < change.bores().size(); bore++) {
                assertEquals(change.bores().get(bore).amount(), found[5 + bore], rounding, where);
            }
        };
    }

    /** Of 0.0104 L/s, whose halves round to nothing: they once had 60.0 and 50.0 %. */
    @Test
    void sharesOfASmallWholeAreNotThoseOfRoundedFigures() {
        browser.run("chooseTaken({place: 0, date: 0, quantity: 'loss'})");
        String table = browser.text("taken-table");
        assertTrue(table.contains("Town bore 1 (Shire, proposed)0.005754.3"), table);
        assertTrue(table.contains("Town bore 2 (Shire, proposed)0.004845.7"), table);
        browser.run("chooseTaken({quantity: 'drawdown'})");
    }

    /** The scale of circles stands in the legend, where it covers no place. */
    @Test
    void circlesOfTheMapOfCausesAreLabelledAndTheirScaleStandsOutside() {
        try {
            for (int width : new int[] {360, 1280}) {
                browser.size(width, 900);
                browser.run("chooseTaken({place: 0, date: 1, quantity: 'drawdown'})");
                String written = (String) browser.run("""
                        const kept = CanvasRenderingContext2D.prototype.fillText, written = [];
                        CanvasRenderingContext2D.prototype.fillText = function(text) { written.push(text); };
                        for (const looks of ["all", "causes"]) {
                          lookAtTakenBy(looks);
                          const inSight = circlesOf(partsOfTaken()).filter(c => c.px > 0 && c.py > 0 && c.px < takenMap.width && c.py < takenMap.height);
                          if (!inSight.length) written.push("missing: all");
                          for (const { part } of inSight) if (!written.includes(shortName(part.name))) written.push("missing: " + part.name);
                          written.push("|");
                        }
                        CanvasRenderingContext2D.prototype.fillText = kept;
                        return written.join(" ");
                        """);
                assertTrue(!written.contains("missing"), width + " px: " + written);
                assertTrue(!written.matches(".*\\b50.%.*"), written);
                assertTrue(
                        browser.text("taken-legend").contains("50\u00a0% of the whole"), browser.text("taken-legend"));
            }
        } finally {
            browser.size(1280, 900);
            browser.run("lookAtTakenBy('all')");
        }
    }

    /** By arrow keys, by a click, and by the list. */
    @Test
    void aPlaceOfTheMapOfCausesIsChosenInThreeWays() {
        WebElement map = browser.driver().findElement(By.id("taken-map"));
        browser.run("lookAtTakenBy('all'); chooseTaken({place: 0, date: 1, quantity: 'drawdown'})");
        assertEquals(
                "Drawdown at Wattle Springs from the start until 1 July 2076: 8.00 m. Largest parts:"
                        + " Town bore 1 (Shire, proposed): 3.20 m, 40.0 %; Town bore 2 (Shire, proposed): 2.40 m, 30.0 %;"
                        + " Town bore 3 (Shire, proposed): 0.80 m, 10.0 %. Drift 0.64 m, 8.0 %; not linear, and rounding,"
                        + " 0.16 m, 2.0 %.",
                browser.text("taken-reading").replace('\u00a0', ' '));
        map.sendKeys(Keys.ARROW_DOWN, Keys.ARROW_DOWN);
        assertEquals(
                "Town bore 2 (Shire, proposed): 2.40 m, 30.0 % of 8.00 m at Wattle Springs.",
                browser.text("taken-reading").replace('\u00a0', ' '));
        map.sendKeys(Keys.ARROW_RIGHT);
        assertTrue(browser.text("taken-reading").startsWith("Drawdown at Town bore 2 from"), "the next place");
        browser.run("const s = siteNamed('Old Number One'), [x, y] = toPixel(s.x, s.y, takenMap),"
                + " b = takenMap.canvas.getBoundingClientRect(); takenMap.canvas.dispatchEvent(new MouseEvent('click',"
                + " {clientX: b.left + x + 9, clientY: b.top + y - 9}))");
        assertTrue(browser.text("taken-reading").startsWith("Drawdown at Old Number One from"), "clicked");
        browser.driver().findElement(By.id("taken-place")).sendKeys("Wattle Springs");
        browser.driver().findElement(By.id("taken-quantity")).sendKeys("Lost discharge");
        assertTrue(
                browser.text("taken-reading").startsWith("Discharge lost at Wattle Springs from the start until"),
                browser.text("taken-reading"));
        assertTrue(browser.text("taken-table").contains("(L/s)"), browser.text("taken-table"));
    }

    /** Areas are as shares; a bore that gives has a minus sign and a line of the legend; cancelled wholes have no shares. */
    @Test
    void theMapOfCausesShowsSharesAsAreas() {
        browser.run("chooseTaken({place: 0, date: 0, quantity: 'drawdown'})");
        double[] areas = browser.numbers("return circlesOf(partsOfTaken()).map(c => (c.r / wholeRadius()) ** 2)");
        // A thousandth of 4.004 m rounds to nothing, and so does no water at all.
        assertArrayEquals(new double[] {0.6, 0.4, 0.101}, areas, 1e-4);
        assertTrue(browser.text("taken-legend").contains("raises head"), browser.text("taken-legend"));
        assertTrue(browser.text("taken-table").contains("2 bores that each round to nothing"), "small ones");
        assertTrue(browser.text("taken-table").contains("\u22120.40\u221210.1"), browser.text("taken-table"));
        browser.run("chooseTaken({place: 1})");
        areas = browser.numbers("return circlesOf(partsOfTaken()).map(c => (c.r / wholeRadius()) ** 2)");
        assertArrayEquals(new double[] {7.5 / 14.1, 6.6 / 14.1}, areas, 1e-4);
        String reading = browser.text("taken-reading");
        assertTrue(reading.contains("(no shares: parts for and against mostly cancel)"), reading);
        assertEquals(-1, reading.indexOf('%'), reading);
    }

    @Test
    void shapesInTheMetresOfTheMapAreDrawnAndOthersAreRefused() {
        String inside = "{\"type\":\"LineString\",\"coordinates\":[[60000,40000],[70000,45000]]}";
        String degrees = "{\"type\":\"Point\",\"coordinates\":[142.1,-28.3]}";
        assertEquals("a: 1 shape drawn.", browser.run("return addOverlay('a', arguments[0])", inside));
        assertTrue(String.valueOf(browser.run("return addOverlay('b', arguments[0])", degrees))
                .contains("lies outside the map"));
        assertTrue(String.valueOf(browser.run("return addOverlay('c', '{]')")).contains("is no GeoJSON"));
        browser.run("map.overlays.length = 0; drawMap()");
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 768, 360})
    void thePageNeverScrollsSideways(int width) throws IOException {
        try {
            browser.size(width, 900);
            browser.run("window.scrollTo(0, 0)");
            browser.picture(PICTURES.resolve("report-" + width + ".png"));
            long wide = (Long) browser.run("return document.documentElement.scrollWidth");
            assertTrue(wide <= width, () -> "the page is " + wide + " px wide");
        } finally {
            browser.size(1000, 900);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"light", "dark"})
    void thePageHasNoSeriousBarrier(String scheme) throws IOException {
        browser.colours(scheme);
        try {
            assertEquals(List.of(), browser.barriers());
        } finally {
            browser.colours("light");
        }
    }

    /** 180 x 267 mm of A4 at 96 pixels a inch: the answer fits on one page, map and section on the next. */
    @Test
    void theSummaryTakesTwoPagesOfPaper() {
        browser.paper();
        try {
            double[] tops = browser.numbers("return ['map-part', 'evidence'].map(id => "
                    + "document.getElementById(id).getBoundingClientRect().top + scrollY)");
            assertTrue(tops[0] <= 1009, () -> "the answer takes " + tops[0] + " px");
            assertTrue(tops[1] - tops[0] <= 1009, () -> "map and section take " + (tops[1] - tops[0]) + " px");
        } finally {
            browser.colours("light");
            browser.size(1000, 900);
        }
    }

    /** Skia writes page objects in plain text, so pages and their size can be read off. */
    @Test
    void thePageIsPrintedOnA4() {
        String pdf = new String(browser.pdf(), StandardCharsets.ISO_8859_1);
        long pages = Pattern.compile("/Type\\s*/Page\\b").matcher(pdf).results().count();
        assertTrue(pages >= 5 && pages <= 25, () -> "found " + pages + " pages");
        assertTrue(
                Pattern.compile("/MediaBox \\[0 0 59[45][.\\d]* 84[12][.\\d]*\\]")
                        .matcher(pdf)
                        .find(),
                "not A4");
    }
}
