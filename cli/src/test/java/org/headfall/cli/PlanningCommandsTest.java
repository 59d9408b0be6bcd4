package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The commands {@code site}, {@code spacing} and {@code allocate} on a built-in example with few cells and years. */
class PlanningCommandsTest {

    private static final Path EXAMPLE = Path.of("..", "scenarios", "examples", "corella");
    private static final int WIDEST = 80;

    @TempDir
    private Path folder;

    private Path document;

    @BeforeEach
    void copy() throws IOException {
        try (Stream<Path> files = Files.list(EXAMPLE)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
        document = folder.resolve("scenario.yaml");
        change("period: {from: 2027-07-01, for: 20 yr}", "period: {from: 2027-07-01, for: 4 yr}");
        change("  cell: 1 km", "  cell: 2 km");
        change("report_after: [1 yr, 10 yr, 20 yr]", "report_after: [1 yr, 4 yr]");
        change("head_tolerance: 0.5 mm", "head_tolerance: 5 mm");
        change("rates_change_after: 10 yr", "rates_change_after: 2 yr");
        change("  sites: 3", "  sites: 2");
    }

    private void change(String found, String replacement) throws IOException {
        String text = Files.readString(document);
        assertTrue(text.contains(found), found);
        Files.writeString(document, text.replace(found, replacement));
    }

    /** All lines of an answer but the one that ends with the name of the folder. */
    private static void assertFitsTheTerminal(Answer answer) {
        answer.out().lines().filter(line -> !line.startsWith("Written")).forEach(line -> {
            assertTrue(line.length() <= WIDEST || !line.trim().contains(" "), line);
        });
    }

    private Path results(String ending) {
        return folder.resolve("results").resolve("scenario" + ending);
    }

    @Test
    void sitesAreFoundAndLimitsThatCannotBeCountedAreNamed() throws IOException {
        change("start: {steady", """
                  - name: the bore keeps flowing
                    quantity: flow
                    at: Wirra stock bore
                    when: ever
                    at_least: 0.5 L/s
                  - name: nowhere deep
                    quantity: drawdown
                    at: every cell
                    cause: proposed bores
                    compared_with: without them
                    when: ever
                    at_most: 40 m
                start: {steady""");
        Answer answer = headfall("site", folder.toString()).exits(0);
        String text = answer.out();
        assertTrue(text.startsWith("Sites found: 2"), text);
        assertTrue(text.contains("the bore keeps flowing (Wirra stock bore) limits a flow"), text);
        assertTrue(text.replaceAll("\\s+", " ").contains("nowhere deep (every cell) is judged on the map"), text);
        assertTrue(text.contains("Unit responses: computed anew"), text);
        assertFitsTheTerminal(answer);
        Path sites = results("-sites");
        assertEquals(
                3, Files.readAllLines(sites.resolve("limits-not-counted.csv")).size());
        String page = Files.readString(sites.resolve("sites.html"));
        for (String part :
                List.of("new site 2", "Largest rate of a new bore", "the bore keeps flowing", "not a permit")) {
            assertTrue(page.contains(part), part);
        }
        assertFalse(page.contains("http-equiv=\"refresh\"") || page.contains("src=\"http"), "nothing from the network");
    }

    @Test
    void aSiteBesideAFixedHeadIsCautionedAbout() throws IOException {
        change("    sides: 3 km\n", "");
        Answer answer = headfall("site", folder.toString(), "--without-check").exits(0);
        assertTrue(
                answer.outInOneLine()
                        .contains("Caution: New sites 1 and 2 stand 1.0 km from 'eastern ranges', whose head is fixed"),
                answer.out());
        assertFitsTheTerminal(answer);
    }

    @Test
    void aRunLeavesResponsesThatSearchesUse() throws IOException {
        headfall("run", folder.toString(), "--quiet").exits(0);
        Answer answer = headfall("allocate", folder.toString()).exits(0);
        assertTrue(answer.outInOneLine().contains("(same aquifer and grid)"), answer.out());
        assertFitsTheTerminal(answer);
        List<String> prices = Files.readAllLines(results("-rates").resolve("prices.csv"));
        assertTrue(prices.stream().anyMatch(line -> line.contains("ML/yr per m")), prices::toString);
        assertTrue(Files.readAllLines(results("-rates").resolve("trading.csv")).size() > 1, "exchange rates");
        change("storativity: 2.0e-4", "storativity: 2.1e-4");
        answer = headfall("site", folder.toString(), "--without-check").exits(0);
        assertTrue(answer.outInOneLine().contains("this differs: storativity"), answer.out());
    }

    @Test
    void ratesAreAnsweredAsJson() throws IOException {
        String json = headfall("allocate", folder.toString(), "--json").exits(0).out();
        JsonNode answer = new JsonMapper().readTree(json);
        assertEquals("ML/yr", answer.get("goalUnit").asString());
        assertTrue(answer.get("yieldMegalitresPerYear").asDouble() > 0);
        assertEquals(2, answer.get("bores").size());
        assertTrue(answer.get("rounds").get("settled").asBoolean(), json);
        assertTrue(answer.get("rounds").get("notKept").isEmpty(), json);
    }

    /** Bores whose pumps lift 5 L/s at the most reach no minimum of 20 L/s, which no reading can know. */
    @Test
    void wishesThatContradictEachOtherAreNamedWithWhatIsPossible() throws IOException {
        String pump = "pump: {curve: [[0 L/s, 200 m], [3 L/s, 180 m], [5 L/s, 150 m]], delivery_level: 125 m}";
        change("rate: 12 L/s", pump);
        change("rate: 10 L/s", pump);
        change("at_least: 8 L/s}", "at_least: 20 L/s}");
        headfall("check", folder.toString()).exits(0);
        Answer answer = headfall("allocate", folder.toString()).exits(1);
        assertTrue(answer.err().contains("minimum of Corella town"), answer.err());
        assertTrue(answer.err().contains("20.00 L/s wanted, 10.00 possible"), answer.err());
        // 10 L/s are 10 x 86400 x 365.25 / 1e6 = 315.576 ML in a year.
        change("at_least: 20 L/s}", "at_least: 500 ML/yr}");
        answer = headfall("allocate", folder.toString()).exits(1);
        assertTrue(answer.err().contains("500.00 ML/yr wanted, 315.58 possible"), answer.err());
    }

    @Test
    void aPumpThatLiftsNothingIsSaidSoAndHasNoNumbers() throws IOException {
        change("rate: 12 L/s", "pump: {curve: [[0 L/s, 8 m], [3 L/s, 6 m], [5 L/s, 2 m]], delivery_level: 125 m}");
        Answer answer = headfall("allocate", folder.toString()).exits(0);
        assertTrue(
                answer.outInOneLine().contains("(Town 1): gives no water at all: its pump takes a head"), answer.out());
        String json = headfall("allocate", folder.toString(), "--json", "--overwrite")
                .exits(0)
                .out();
        JsonNode limits = new JsonMapper().readTree(json).get("limits");
        JsonNode lift = limits.get(limits.size() - 1);
        assertTrue(lift.get("name").asString().contains("(Town 1)"), lift::toString);
        assertTrue(lift.get("predicted").isNull() && lift.get("simulated").isNull(), lift::toString);
    }

    @Test
    void daysInNoSeasonAreRemarkedBeforeTheAnswer() throws IOException {
        change("{from: 1 April, to: 30 September}", "{from: 1 May, to: 30 September}");
        Answer answer = headfall("allocate", folder.toString()).exits(0);
        assertTrue(answer.err().contains("take nothing on days in no season: 1 April to 30 April"), answer.err());
        List<String> rates = Files.readAllLines(results("-rates").resolve("rates.csv"));
        assertTrue(rates.stream().anyMatch(line -> line.matches("2029-04-01,0(\\.0+)?,0(\\.0+)?")), rates::toString);
    }

    @Test
    void aSectionThatIsMissingIsAskedForByName() throws IOException {
        Files.writeString(document, Files.readString(document).replaceAll("(?s)\nspacing:.*", "\n"));
        Answer answer = headfall("spacing", folder.toString()).exits(1);
        assertTrue(
                answer.err().contains("spacing is missing: found a document without it; needed: the section spacing"),
                answer.err());
    }

    @Test
    void limitsThatMustGiveWayAreNamedWithTheirValues() throws IOException {
        change("at_least: 8 L/s}", "at_least: 55 L/s}");
        Answer answer = headfall("allocate", folder.toString()).exits(0);
        assertTrue(answer.out().contains("would have to give way"), answer.out());
        assertTrue(answer.out().contains("from 25.00 to") || answer.out().contains("from 3.00 to"), answer.out());
        assertTrue(Files.exists(results("-rates").resolve("conflicts.csv")));
        assertTrue(answer.outInOneLine().contains("finds limits that have to give way broken"), answer.out());
        assertFalse(answer.outInOneLine().contains("finds it kept"), answer.out());
        assertFitsTheTerminal(answer);
        String page = Files.readString(results("-rates").resolve("rates.html"));
        String mean = answer.out()
                .lines()
                .filter(line -> line.startsWith("Mean taking"))
                .findFirst()
                .orElseThrow();
        assertTrue(page.contains("<li dir=\"auto\">" + mean + ", all bores together.</li>"), mean);
        assertTrue(page.contains("would have to give way by at least: "), "the contradiction on the page");
    }

    @Test
    void seasonsThatShareDaysAreRefusedWithTheirLine() throws IOException {
        change("{from: 1 April, to: 30 September}", "{from: 1 March, to: 30 September}");
        Answer answer = headfall("check", folder.toString()).exits(1);
        long line = Files.readString(document)
                        .lines()
                        .takeWhile(one -> !one.contains("from: 1 March"))
                        .count()
                + 1;
        assertTrue(answer.err().contains("scenario.yaml:" + line + ":"), answer.err());
        assertTrue(answer.err().contains("shares days with the season number 1"), answer.err());
    }

    @Test
    void spacingSaysWhereTheLeastCostStandsAtTheEndOfTheRange() throws IOException {
        Answer answer = headfall("spacing", folder.toString()).exits(0);
        assertFalse(answer.out().contains("the end of the range"), answer.out());
        assertTrue(
                answer.out()
                        .replaceAll("\\s+", " ")
                        .matches(
                                ".*the bores of the document lower heads in the middle of the field by \\d\\.\\d\\d m: .*"),
                answer.out());
        assertFitsTheTerminal(answer);
        String words = answer.outInOneLine();
        assertTrue(words.contains("By cells twice as wide the grid") && !words.contains("NaN"), words);
        assertTrue(words.contains("grid of 2 bores is the line"), words);
        String page = Files.readString(results("-spacing").resolve("spacing.html"));
        assertTrue(page.contains("Spacing of least cost") && page.contains("\"bestSpacing\""), "page");
        change("spacings: {from: 50 m, to: 5 km, steps: 16}", "spacings: {from: 2 km, to: 5 km, steps: 4}");
        answer = headfall("spacing", folder.toString(), "--overwrite").exits(0);
        assertTrue(answer.outInOneLine().contains("2000 m apart (the end of the range)"), answer.out());
        assertTrue(answer.out().contains("widen from and to"), answer.out());
        List<String> economic = Files.readAllLines(results("-spacing").resolve("economic-spacing.csv"));
        assertTrue(economic.get(1).endsWith("at the end of the range of spacings"), economic::toString);
    }
}
