package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The commands {@code run} and {@code report} on the scenario of src/test/resources/scenario/two-bores. */
class RunCommandTest {

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @TempDir
    private Path folder;

    private Path document;
    private Path results;

    @BeforeEach
    void copyScenario() throws IOException, URISyntaxException {
        document = folder.resolve("scenario.yaml");
        results = folder.resolve("results").resolve("scenario");
        Files.copy(
                Path.of(RunCommandTest.class
                        .getResource("/scenario/two-bores/scenario.yaml")
                        .toURI()),
                document);
    }

    private int headfall(Terminal terminal, String... arguments) {
        out.getBuffer().setLength(0);
        err.getBuffer().setLength(0);
        return Headfall.execute(terminal, new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    }

    private int headfall(String... arguments) {
        return headfall(Terminal.NONE, arguments);
    }

    private void change(String found, String replacement) throws IOException {
        String text = Files.readString(document);
        assertTrue(text.contains(found), found);
        Files.writeString(document, text.replace(found, replacement));
    }

    @Test
    void writesResultsBesideTheScenarioAndSaysWhatCameOfIt() throws IOException {
        assertEquals(0, headfall("run", folder.toString()), err::toString);
        for (String file : List.of("heads.nc", "bores.nc", "report.html", "limits.csv", "interference.csv")) {
            assertTrue(Files.size(results.resolve(file)) > 0, file);
        }
        String answer = out.toString();
        assertTrue(answer.contains("The field holds: the one limit is kept."), answer);
        assertTrue(answer.contains("First to stop flowing     flowing on 2026-"), answer);
        assertTrue(answer.contains("Largest loss of head      "), answer);
        assertTrue(answer.contains("Least water above pump"), answer);
        assertTrue(answer.contains("Water balance             closes within"), answer);
        assertTrue(answer.contains("Written to " + results), answer);
        assertTrue(err.toString().startsWith("finding heads at the start"), err::toString);
    }

    @Test
    void keepsTheSummaryWithinEightyColumnsAndPlainInAPipe() {
        assertEquals(0, headfall("run", document.toString()));
        assertTrue(
                out.toString().lines().allMatch(line -> line.length() <= 80 || line.startsWith("Written to")),
                out::toString);
        assertFalse(out.toString().contains("\u001b"), out::toString);
    }

    @Test
    void showsColourAndARewrittenLineOnATerminal() {
        assertEquals(0, headfall(new Terminal(true, true, true), "run", document.toString()));
        assertTrue(out.toString().contains("\u001b["), out::toString);
        assertTrue(err.toString().contains("\rsimulating"), err::toString);
        assertEquals(0, headfall(new Terminal(true, true, false), "run", document.toString(), "--overwrite"));
        assertFalse(out.toString().contains("\u001b"), "colour although NO_COLOR is set");
    }

    @Test
    void saysNothingWhenQuiet() {
        assertEquals(0, headfall("run", folder.toString(), "--quiet"));
        assertEquals("", out.toString() + err);
    }

    @Test
    void answersInJson() {
        assertEquals(0, headfall("run", folder.toString(), "--json", "--threads", "1"));
        JsonNode answer = JsonMapper.shared().readTree(out.toString());
        assertEquals("HOLDS", answer.get("verdict").asString());
        assertEquals("holds", answer.get("limits").get(0).get("outcome").asString());
        assertEquals("flowing", answer.get("stopFlowing").get(0).get("station").asString());
        assertTrue(answer.get("balanceDiscrepancy").asDouble() < 1e-6);
        assertTrue(answer.get("largestLossOfHead").get("metres").asDouble() > 1);
    }

    @Test
    void runsEachCaseIntoAFolderOfItsOwn() throws IOException {
        change("limits:", "cases: [without any taking, existing as used]\nlimits:");
        assertEquals(0, headfall("run", folder.toString(), "--threads", "1"), err::toString);
        for (String name : List.of("without-any-taking", "existing-as-used")) {
            assertTrue(Files.size(results.resolve(name).resolve("limits.csv")) > 0, name);
            assertTrue(out.toString().contains("Written to " + results.resolve(name)), out::toString);
        }
        assertTrue(Files.size(results.resolve("limits-by-case.csv")) > 0);
        String[] lines = out.toString().lines().toArray(String[]::new);
        int head = List.of(lines)
                .indexOf("Case                               limits  kept  crossed  undecided  not judged");
        assertTrue(head > 0, out::toString);
        assertEquals(
                "without any taking                      1     1        0          0           0", lines[head + 1]);
        assertTrue(lines[head + 2].startsWith("  closest: "), lines[head + 2]);
        assertTrue(
                List.of(lines).subList(head, lines.length).stream()
                        .anyMatch(line -> line.startsWith("existing as used                        1")),
                out::toString);
        assertEquals(1, headfall("run", folder.toString()), "they are kept");
        assertEquals(0, headfall("run", folder.toString(), "--overwrite", "--json"), err::toString);
        assertTrue(out.toString().contains("\"without any taking\""), out::toString);
    }

    @Test
    void keepsResultsUnlessAskedToReplaceThem() throws IOException {
        assertEquals(0, headfall("run", folder.toString(), "--quiet"));
        byte[] before = Files.readAllBytes(results.resolve("report.html"));
        change("rate: 40 L/s", "rate: 10 L/s");
        assertEquals(1, headfall("run", folder.toString()));
        assertTrue(err.toString().contains("results exist; they are kept"), err::toString);
        assertTrue(err.toString().contains("replace them with --overwrite"), err::toString);
        assertArrayEquals(before, Files.readAllBytes(results.resolve("report.html")));
        assertEquals(0, headfall("run", folder.toString(), "--overwrite"));
        assertFalse(java.util.Arrays.equals(before, Files.readAllBytes(results.resolve("report.html"))));
    }

    @Test
    void putsResultsWhereAsked() {
        Path elsewhere = folder.resolve("a").resolve("b");
        assertEquals(0, headfall("run", folder.toString(), "--output", elsewhere.toString(), "--quiet"));
        assertTrue(Files.isRegularFile(elsewhere.resolve("report.html")));
        assertFalse(Files.exists(results));
    }

    @Test
    void failsOnACrossedLimitOnlyIfAsked() throws IOException {
        change("at_most: 20 m", "at_most: 0.5 m");
        assertEquals(0, headfall("run", folder.toString()));
        assertTrue(out.toString().contains("The field does not hold: the one limit is crossed."), out::toString);
        assertTrue(out.toString().contains("  crossed: pool keeps its head, at pool, from 2026-"), out::toString);
        assertEquals(3, headfall("run", folder.toString(), "--fail-on-limit", "--overwrite"));
        assertEquals(3, headfall("run", folder.toString(), "--fail-on-limit", "--overwrite", "--quiet"));
    }

    @Test
    void refusesABadScenarioAndWritesNothing() throws IOException {
        change("storativity: 2.0e-4", "storativity: -2.0e-4");
        assertEquals(1, headfall("run", folder.toString(), "--json"));
        assertTrue(err.toString().contains("scenario.yaml:11:16: aquifer.storativity"), err::toString);
        JsonNode problem =
                JsonMapper.shared().readTree(out.toString()).get("problems").get(0);
        assertEquals(11, problem.get("line").asInt());
        assertEquals("OUT_OF_RANGE", problem.get("kind").asString());
        assertFalse(Files.exists(results.getParent()));
    }

    @Test
    void refusesAScenarioWithoutAPlaceToComputeFor() throws IOException {
        String text = Files.readString(document);
        Files.writeString(document, text.substring(0, text.indexOf("springs:")) + "start: {steady: without bores}\n");
        assertEquals(1, headfall("check", folder.toString()));
        assertTrue(err.toString().contains("no bore, no spring and no protected point"), err::toString);
        assertEquals(1, headfall("run", folder.toString()));
    }

    @Test
    void refusesAScenarioThatIsNotThere() {
        assertEquals(1, headfall("run", folder.resolve("nowhere").toString()));
        assertTrue(err.toString().contains("does not exist"), err::toString);
    }

    @Test
    void refusesFilesOutsideItsFolderUnlessAllowed() throws IOException {
        Path inner = Files.createDirectory(folder.resolve("inner"));
        Files.writeString(folder.resolve("rain.csv"), "date,rate (mm/yr)\n2026-07-01,1\n");
        change("springs:", "recharge:\n  - {name: rain, rate: {file: ../rain.csv, column: rate}}\nsprings:");
        Files.move(document, inner.resolve("scenario.yaml"));
        assertEquals(1, headfall("run", inner.toString()));
        assertTrue(err.toString().contains("is outside the folder"), err::toString);
        assertEquals(0, headfall("run", inner.toString(), "--allow-outside-files"), err::toString);
    }

    @Test
    void refusesAnOutputFolderThatCannotBeMade() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "not a folder");
        assertEquals(
                1,
                headfall(
                        "run",
                        folder.toString(),
                        "--output",
                        file.resolve("results").toString(),
                        "--json"));
        assertTrue(err.toString().contains("cannot be written"), err::toString);
        assertTrue(JsonMapper.shared()
                .readTree(out.toString())
                .get("error")
                .asString()
                .contains("cannot be written"));
    }

    @Test
    void neverReplacesTheScenarioWithResults() throws IOException {
        String before = Files.readString(document);
        for (Path place : List.of(document, folder)) {
            assertEquals(1, headfall("run", folder.toString(), "--output", place.toString(), "--overwrite"));
            assertTrue(err.toString().contains("it is kept"), err::toString);
            assertEquals(before, Files.readString(document));
        }
    }

    @Test
    void refusesAThreadCountThatMakesNoSense() {
        assertEquals(2, headfall("run", folder.toString(), "--threads", "0"));
        assertEquals(2, headfall("run", folder.toString(), "--threads", "100000"));
        assertEquals(2, headfall("run", folder.toString(), "--threads", "many"));
    }

    @Test
    void writesTheReportAgainFromTheFolderAlone() throws IOException {
        assertEquals(0, headfall("run", folder.toString(), "--quiet"));
        String before = Files.readString(results.resolve("report.html"));
        Files.delete(results.resolve("report.html"));
        Files.delete(document);
        assertEquals(0, headfall("report", results.toString()), err::toString);
        assertEquals(before, Files.readString(results.resolve("report.html")));
        Path copy = folder.resolve("copy.html");
        assertEquals(0, headfall("report", results.toString(), "--output", copy.toString()));
        assertEquals(before, Files.readString(copy));
    }

    @Test
    void refusesToReportAFolderWithoutResults() {
        assertEquals(1, headfall("report", folder.toString()));
        assertTrue(err.toString().contains("holds no finished results"), err::toString);
    }
}
