package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** The command {@code estimate}, where it answers and where it runs in full; the reference is {@code run} on the same document. */
class EstimateCommandTest {

    private static final String MAP_LIMIT = """
            limits:
              - name: nowhere deep
                quantity: drawdown
                at: every cell
                cause: proposed bores
                compared_with: without them
                when: ever
                at_most: 60 m
            """;

    @TempDir
    private Path folder;

    private Path document;
    private Path estimated;
    private Path run;

    @BeforeEach
    void copyScenario() throws IOException, URISyntaxException {
        document = folder.resolve("scenario.yaml");
        estimated = folder.resolve("results").resolve("scenario-estimate");
        run = folder.resolve("run");
        Files.copy(
                Path.of(EstimateCommandTest.class
                        .getResource("/scenario/two-bores/scenario.yaml")
                        .toURI()),
                document);
    }

    private void change(String found, String replacement) throws IOException {
        String text = Files.readString(document);
        assertTrue(text.contains(found), found);
        Files.writeString(document, text.replace(found, replacement));
    }

    private Answer runAnew(String... options) {
        return headfall(Stream.concat(
                                Stream.of("run", folder.toString(), "--output", run.toString()), Stream.of(options))
                        .toArray(String[]::new))
                .exits(0);
    }

    private static Set<String> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).collect(Collectors.toCollection(TreeSet::new));
        }
    }

    /** All files of a run, and in every table and raster the same to the last byte. */
    private void assertResultsAreThoseOfARun() throws IOException {
        Set<String> files = files(run);
        assertEquals(files, files(estimated));
        List<String> compared = files.stream()
                .filter(name -> name.endsWith(".csv") || name.endsWith(".tif") || name.endsWith(".geojson"))
                .toList();
        assertTrue(compared.containsAll(List.of("bores.csv", "limits.csv", "attribution.csv", "water-balance.csv")));
        for (String name : compared) {
            assertArrayEquals(Files.readAllBytes(run.resolve(name)), Files.readAllBytes(estimated.resolve(name)), name);
        }
    }

    /** The answer without what two runs of the same differ in. */
    private static JsonNode figures(JsonNode answer) {
        return ((ObjectNode) answer).remove(List.of("simulatedBecause", "effort", "folder"));
    }

    @Test
    void aLimitOnTheMapIsRunInFullAndSaidSo() throws IOException {
        headfall("run", folder.toString(), "--quiet").exits(0);
        change("rate: 40 L/s", "rate: 30 L/s");
        change("limits:\n", MAP_LIMIT);
        String reason = "limit 'nowhere deep' is judged on the map or after taking has stopped";

        Answer text = headfall("estimate", folder.toString()).exits(0);
        assertTrue(
                text.err()
                        .replaceAll("\\s+", " ")
                        .contains("simulated in full, unit responses do not answer it: " + reason),
                text.err());
        assertTrue(text.outInOneLine().contains("Simulated because " + reason), text.out());
        assertTrue(text.out().contains("Water balance             closes within"), text.out());
        assertFalse(text.out().contains("Answered from"), text.out());
        assertTrue(text.out().contains("Written to " + estimated), text.out());

        JsonNode ofRun = JsonMapper.shared().readTree(runAnew("--json").out());
        assertTrue(ofRun.path("simulatedBecause").isNull()
                || ofRun.path("simulatedBecause").isMissingNode());
        assertResultsAreThoseOfARun();

        JsonNode json = JsonMapper.shared()
                .readTree(headfall("estimate", folder.toString(), "--json", "--overwrite")
                        .exits(0)
                        .out());
        assertEquals(reason, json.get("simulatedBecause").asString());
        assertTrue(
                json.path("answeredFrom").isNull() || json.path("answeredFrom").isMissingNode());
        assertEquals(2, json.get("limits").size());
        assertEquals(figures(ofRun), figures(json));
    }

    /** Responses reach 17 times as far as the run they come from: of 100 days 1700, and the new run takes 1826. */
    @Test
    void aRunLongerThanTheResponsesIsRunInFull() throws IOException {
        change("for: 5 yr}", "for: 100 d}");
        change("report_after: [1 yr, 5 yr]", "report_after: [50 d]");
        headfall("run", folder.toString(), "--quiet").exits(0);
        change("for: 100 d}", "for: 5 yr}");
        change("report_after: [50 d]", "report_after: [1 yr, 5 yr]");
        Answer answer = headfall("estimate", folder.toString()).exits(0);
        assertTrue(
                answer.outInOneLine()
                        .contains("Simulated because the unit responses reach day 1700 only, the run day 1826"),
                answer.out());
        runAnew("--quiet");
        assertResultsAreThoseOfARun();
    }

    /** Quiet it tells the reason still, which is no summary; a crossed limit of the full run answers as one of an estimate. */
    @Test
    void theFullRunKeepsToTheOptions() throws IOException {
        headfall("run", folder.toString(), "--quiet").exits(0);
        change("limits:\n", MAP_LIMIT.replace("60 m", "1 m"));
        Answer answer = headfall("estimate", folder.toString(), "--quiet", "--fail-on-limit")
                .exits(3);
        assertEquals("", answer.out());
        assertTrue(Files.isRegularFile(estimated.resolve("heads.nc")));
        headfall("estimate", folder.toString(), "--quiet").exits(1);
    }

    /** Without such a reason nothing is simulated; heads of the answer are those of a run within the 5 mm that it promises. */
    @Test
    void otherRatesAreAnsweredFromResponses() throws IOException {
        change("head_tolerance: 1 cm", "head_tolerance: 1 mm");
        headfall("run", folder.toString(), "--quiet").exits(0);
        change("rate: 40 L/s", "rate: 30 L/s");
        Answer answer = headfall("estimate", folder.toString()).exits(0);
        assertTrue(answer.out().contains("Answered from"), answer.out());
        assertFalse(answer.out().contains("Simulated because") || answer.err().contains("simulated"), answer.out());
        assertFalse(Files.exists(estimated.resolve("heads.nc")));
        runAnew("--quiet");
        List<String> ofRun = Files.readAllLines(run.resolve("bores.csv"));
        List<String> ofAnswer = Files.readAllLines(estimated.resolve("bores.csv"));
        assertEquals(ofRun.size(), ofAnswer.size());
        assertEquals(ofRun.get(0), ofAnswer.get(0));
        int head = List.of(ofRun.get(0).split(",")).indexOf("head (m above datum)");
        for (int i = 1; i < ofRun.size(); i++) {
            String line = ofAnswer.get(i);
            assertEquals(cell(ofRun.get(i), head), cell(line, head), 0.005, line);
        }
    }

    private static double cell(String line, int column) {
        return Double.parseDouble(line.split(",", -1)[column]);
    }
}
