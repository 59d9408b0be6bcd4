package org.headfall.scenarios.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.headfall.scenarios.report.content.ReportContent;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.print.PrintOptions;

/** The page in a real browser; skipped where chromium and its driver are not on the path. */
class BrowserPageTest {

    private static final long SEED = 20_260_702;
    private static final ReportContent CONTENT = InventedField.content(SEED, 160, 90);

    @TempDir
    static Path folder;

    private static ChromeDriver browser;

    @BeforeAll
    static void openThePage() throws IOException {
        Optional<Path> chromium = onPath("chromium");
        Optional<Path> driver = onPath("chromedriver");
        assumeTrue(
                chromium.isPresent() && driver.isPresent(),
                "skipped: chromium and chromedriver (Debian packages chromium, chromium-driver) are not on the path");
        Path page = folder.resolve("report.html");
        ReportWriter.write(CONTENT, page);
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(chromium.orElseThrow().toFile());
        options.setCapability("goog:loggingPrefs", logs);
        options.addArguments(
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--user-data-dir=" + folder.resolve("profile"));
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(driver.orElseThrow().toFile())
                .withSilent(true)
                .build();
        browser = new ChromeDriver(service, options);
        browser.manage().window().setSize(new Dimension(1000, 900));
        browser.get(page.toUri().toString());
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.quit();
        }
    }

    private static Optional<Path> onPath(String program) {
        return Stream.of(Optional.ofNullable(System.getenv("PATH")).orElse("").split(java.io.File.pathSeparator))
                .map(directory -> Path.of(directory, program))
                .filter(Files::isExecutable)
                .findFirst();
    }

    private static String text(String id) {
        return String.valueOf(browser.findElement(By.id(id)).getDomProperty("textContent"));
    }

    @Test
    void theConsoleStaysEmpty() {
        browser.findElement(By.id("map-whole")).click();
        browser.findElement(By.id("map-in")).click();
        assertEquals(List.of(), browser.manage().logs().get(LogType.BROWSER).getAll());
    }

    @Test
    void theReadOutEqualsTheData() {
        for (int date = 0; date < CONTENT.map().heads().size(); date++) {
            for (int[] cell : new int[][] {{0, 0}, {63, 42}, {64, 43}, {159, 89}, {17, 71}}) {
                String reading = (String) browser.executeScript(
                        "chooseDate(arguments[0]); read(field.x[arguments[1]], field.y[arguments[2]]);"
                                + "return document.getElementById('map-reading').textContent",
                        date,
                        cell[0],
                        cell[1]);
                double head = InventedField.head(CONTENT, date, cell[0], cell[1]);
                double shown = number(reading, "head ");
                double drawdown = InventedField.head(CONTENT, 0, cell[0], cell[1]) - head;
                assertEquals(head, shown, 0.0101, () -> "seed " + SEED + ": " + reading);
                assertEquals(drawdown, number(reading, "drawdown "), 0.0101, () -> "seed " + SEED + ": " + reading);
            }
        }
    }

    private static double number(String reading, String name) {
        String rest = reading.substring(reading.indexOf("\u00b7 " + name) + name.length() + 2);
        return Double.parseDouble(rest.substring(0, rest.indexOf(" m")).replace('\u2212', '-'));
    }

    @Test
    void keysMoveTheReadOutAndChooseASite() {
        WebElement map = browser.findElement(By.id("map"));
        map.sendKeys(Keys.ARROW_RIGHT);
        String first = text("map-reading");
        map.sendKeys(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
        assertTrue(first.contains("head above ground"), first);
        assertTrue(!first.equals(text("map-reading")), "the read-out did not move: " + first);
        String site = CONTENT.sites().get(3).name();
        browser.executeScript("map.cursor = [report.sites[3].x, report.sites[3].y]");
        map.sendKeys(Keys.ENTER);
        assertTrue(text("hydrograph-caption").startsWith(site), text("hydrograph-caption"));
    }

    @Test
    void aPhoneNeverScrollsSideways() {
        browser.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", 360, "height", 740, "deviceScaleFactor", 2, "mobile", true));
        try {
            browser.executeAsyncScript("setTimeout(arguments[0], 400)");
            long wide = (Long) browser.executeScript("return document.documentElement.scrollWidth");
            assertTrue(wide <= 360, () -> "the page is " + wide + " px wide");
        } finally {
            browser.executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
        }
    }

    @Test
    void flowsChangeTheirUnitEverywhere() {
        String before =
                (String) browser.executeScript("return document.querySelector('#artesian-head .unit').textContent");
        assertEquals("m", before);
        Object shown = browser.executeScript("const s = document.querySelector('#table-artesian-head .flow-unit');"
                + "s.value = 'ML/d'; s.dispatchEvent(new Event('change'));"
                + "const head = [...document.querySelectorAll('#artesian-head thead th')];"
                + "const column = head.findIndex(h => h.textContent.startsWith('Flow before'));"
                + "return [...document.querySelectorAll('#artesian-head tbody tr')]"
                + ".map(r => r.cells[column].textContent).filter(t => t !== '\u2013')[0]");
        assertEquals("0.12", shown, "120 m3/d in ML/d");
        browser.executeScript("const s = document.querySelector('.flow-unit'); s.value = 'L/s';"
                + "s.dispatchEvent(new Event('change'))");
    }

    @Test
    void tablesSortByValue() {
        Object ordered = browser.executeScript("const t = document.getElementById('artesian-head');"
                + "const i = [...t.tHead.rows[0].cells].findIndex(h => h.textContent.startsWith('Loss'));"
                + "t.tHead.rows[0].cells[i].querySelector('button').click();"
                + "const v = [...t.tBodies[0].rows].map(r => +r.cells[i].dataset.value);"
                + "return v.length > 5 && v.every((x, k) => k === 0 || v[k - 1] <= x)");
        assertEquals(true, ordered);
    }

    @Test
    void thePageHasNoSeriousBarrier() throws IOException {
        try (InputStream axe = BrowserPageTest.class.getResourceAsStream("/axe.min.js")) {
            browser.executeScript(new String(axe.readAllBytes(), StandardCharsets.UTF_8));
        }
        Object found = browser.executeAsyncScript("const done = arguments[0];"
                + "axe.run({resultTypes: ['violations']}).then(r => done(r.violations"
                + ".filter(v => v.impact === 'serious' || v.impact === 'critical')"
                + ".map(v => v.id + ': ' + v.nodes.map(n => n.html.slice(0, 120)).join(' | '))))");
        assertEquals(List.of(), found);
    }

    @Test
    void thePageCanBePrinted() {
        String pdf = browser.print(new PrintOptions()).getContent();
        assertTrue(pdf.length() > 100_000, () -> String.format(Locale.ROOT, "found %d characters", pdf.length()));
    }
}
