package org.headfall.scenarios.report;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** A page in a real browser: Debian's chromium, driven by its chromedriver. */
public final class Browser implements AutoCloseable {

    private final ChromeDriver driver;

    private Browser(ChromeDriver driver) {
        this.driver = driver;
    }

    /** Opens a page and waits until all its parts answer; skips the test where there is no browser. */
    public static Browser open(Path page, Path profile) {
        Optional<Path> chromium = onPath("chromium");
        Optional<Path> driver = onPath("chromedriver");
        assumeTrue(
                chromium.isPresent() && driver.isPresent(),
                "skipped: chromium and chromedriver (Debian packages chromium, chromium-driver) are not on the path");
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
                "--user-data-dir=" + profile);
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(driver.orElseThrow().toFile())
                .withSilent(true)
                .build();
        Browser browser = new Browser(new ChromeDriver(service, options));
        browser.driver.manage().timeouts().scriptTimeout(Duration.ofMinutes(2));
        browser.size(1000, 900);
        browser.colours("light");
        browser.show(page);
        return browser;
    }

    private static Optional<Path> onPath(String program) {
        return Stream.of(Optional.ofNullable(System.getenv("PATH")).orElse("").split(java.io.File.pathSeparator))
                .map(directory -> Path.of(directory, program))
                .filter(Files::isExecutable)
                .findFirst();
    }

    /** Opens another page and waits until it answers. */
    public void show(Path page) {
        driver.get(page.toUri().toString());
        driver.executeAsyncScript("const done = arguments[0]; ready.then(() => done(), error => done(String(error)))");
    }

    public ChromeDriver driver() {
        return driver;
    }

    /** Runs a script and answers what it returns. */
    public Object run(String script, Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    /** Text of an element. */
    public String text(String id) {
        return (String) run("return document.getElementById(arguments[0]).textContent", id);
    }

    /** Numbers that a script returns. */
    public double[] numbers(String script, Object... arguments) {
        return ((List<?>) run(script, arguments))
                .stream().mapToDouble(value -> ((Number) value).doubleValue()).toArray();
    }

    /** What the console of the browser holds. */
    public List<String> console() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .map(LogEntry::toString)
                .toList();
    }

    /** Sets the size of the page and lets it settle. */
    public void size(int width, int height) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 500));
        driver.executeAsyncScript("setTimeout(arguments[0], 300)");
    }

    /** Shows the page in light or dark colours, and without movement, which a test would have to wait for. */
    public void colours(String scheme) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of(
                        "media",
                        "",
                        "features",
                        List.of(
                                Map.of("name", "prefers-color-scheme", "value", scheme),
                                Map.of("name", "prefers-reduced-motion", "value", "reduce"))));
        driver.executeAsyncScript("setTimeout(arguments[0], 300)");
    }

    /** Shows the page as it is printed, as wide as A4 between its margins. */
    public void paper() {
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
        size(680, 1009);
    }

    /** Saves what the page shows. */
    public void picture(Path file) throws IOException {
        Files.createDirectories(Optional.ofNullable(file.getParent()).orElseThrow());
        Files.write(file, driver.getScreenshotAs(OutputType.BYTES));
    }

    /** The page as a PDF, on paper of the size that its style sheet asks for. */
    public byte[] pdf() {
        Map<String, Object> answer = driver.executeCdpCommand(
                "Page.printToPDF", Map.of("preferCSSPageSize", true, "printBackground", false));
        return Base64.getDecoder().decode((String) answer.get("data"));
    }

    /** Serious and critical barriers that axe-core finds. */
    public List<?> barriers() throws IOException {
        try (InputStream axe = Browser.class.getResourceAsStream("/axe.min.js")) {
            run(new String(axe.readAllBytes(), StandardCharsets.UTF_8));
        }
        return (List<?>) driver.executeAsyncScript("const done = arguments[0];"
                + "axe.run({resultTypes: ['violations']}).then(r => done(r.violations"
                + ".filter(v => v.impact === 'serious' || v.impact === 'critical')"
                + ".map(v => v.id + ': ' + v.nodes.map(n => n.html.slice(0, 120)).join(' | '))))");
    }

    @Override
    public void close() {
        driver.quit();
    }
}
