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
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The commands {@code run} and {@code report} on the scenario of src/test/resources/scenario/two-bores. */
class RunCommandTest {

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

    private void change(String found, String replacement) throws IOException {
        String text = Files.readString(document);
        assertTrue(text.contains(found), found);
        Files.writeString(document, text.replace(found, replacement));
    }

    @Test
    void writesResultsBesideTheScenarioAndSaysWhatCameOfIt() throws IOException {
        Answer run = headfall("run", folder.toString()).exits(0);
        for (String file : List.of("heads.nc", "bores.nc", "report.html", "limits.csv", "interference.csv")) {
            assertTrue(Files.size(results.resolve(file)) > 0, file);
        }
        String answer = run.out();
        assertTrue(answer.contains("The field holds: the one limit is kept."), answer);
        assertTrue(answer.contains("First to stop flowing     flowing on 2026-"), answer);
        assertTrue(answer.contains("Largest loss of head      "), answer);
        assertTrue(answer.contains("Least water above pump"), answer);
        assertTrue(answer.contains("Water balance             closes within"), answer);
        assertTrue(answer.contains("Written to " + results), answer);
        assertTrue(run.err().startsWith("finding heads at the start"), run.err());
    }

    /** An outlet level with a digit too many: what never flows cannot stop, which must not read as if it flowed on. */
    @Test
    void aBoreWhoseOutletNoHeadReachesIsSaidToNeverFlow() throws IOException {
        change("outlet_level: 101 m", "outlet_level: 301 m");
        Answer run = headfall("run", folder.toString(), "--threads", "1").exits(0);
        String answer = run.out().replaceAll("\\s+", " ");
        assertTrue(
                answer.contains(
                        "Never flowing flowing never flows: on every recorded day head stays below its outlet, 301.00 m, by 19"),
                answer);
        assertTrue(answer.contains("First to stop flowing none that ever flows stops"), answer);
        String evidence = Files.readString(results.resolve("evidence.json"));
        assertTrue(evidence.contains("never flows: on every recorded day"), evidence);
        assertFalse(evidence.contains("pool never flows"), evidence);
    }

    @Test
    void aBoundOnTheStepIsKeptAndHasTheRunMadeBySteps() throws IOException {
        change("head_tolerance: 1 cm", "head_tolerance: 1 cm, longest_step: 10 d");
        headfall("run", folder.toString()).exits(0);
        JsonNode figures = JsonMapper.shared()
                .readTree(Files.readString(results.resolve("summary.json")))
                .at("/figures");
        assertFalse(figures.at("/solvedBy/bySuperposition").asBoolean(), figures::toString);
        assertTrue(figures.at("/solver/steps").asInt() >= 5 * 365 / 10, figures::toString);
        change("longest_step: 10 d", "longest_step: 10 d, solve: by superposition");
        Answer refused = headfall("check", folder.toString()).exits(1);
        assertTrue(refused.err().contains("longest_step does not go together"), refused.err());
    }

    @Test
    void oneBadValueInARasterIsNamedWithItsPlace() throws IOException {
        String text = Files.readString(document);
        String t = text.lines()
                .filter(line -> line.contains("transmissivity:"))
                .findFirst()
                .orElseThrow();
        StringBuilder raster =
                new StringBuilder("ncols 20\nnrows 20\nxllcorner 400000\nyllcorner 6300000\ncellsize 1000\n");
        for (int row = 0; row < 20; row++) {
            raster.append("300 ".repeat(19)).append(row == 14 ? "-5" : "300").append('\n');
        }
        Files.writeString(folder.resolve("t.asc"), raster);
        change(t, t.substring(0, t.indexOf("transmissivity:")) + "transmissivity: {raster: t.asc, unit: m2/d}");
        Answer refused = headfall("run", folder.toString()).exits(1);
        assertTrue(refused.err().contains("t.asc") && refused.err().contains("-5"), refused.err());
        assertFalse(Files.exists(results));
    }

    @Test
    void keepsTheSummaryWithinEightyColumnsAndPlainInAPipe() {
        Answer answer = headfall("run", document.toString()).exits(0);
        assertTrue(
                answer.out().lines().allMatch(line -> line.length() <= 80 || line.startsWith("Written to")),
                answer.out());
        assertFalse(answer.out().contains("\u001b"), answer.out());
    }

    @Test
    void showsColourAndARewrittenLineOnATerminal() {
        Answer answer = headfall(new Terminal(true, true, true), "run", document.toString())
                .exits(0);
        assertTrue(answer.out().contains("\u001b["), answer.out());
        assertTrue(answer.err().contains("\rsimulating"), answer.err());
        answer = headfall(new Terminal(true, true, false), "run", document.toString(), "--overwrite")
                .exits(0);
        assertFalse(answer.out().contains("\u001b"), "colour although NO_COLOR is set");
    }

    @Test
    void saysNothingWhenQuiet() {
        Answer answer = headfall("run", folder.toString(), "--quiet").exits(0);
        assertEquals("", answer.out() + answer.err());
    }

    @Test
    void answersInJson() {
        String json = headfall("run", folder.toString(), "--json", "--threads", "1")
                .exits(0)
                .out();
        JsonNode answer = JsonMapper.shared().readTree(json);
        assertEquals("HOLDS", answer.get("verdict").asString());
        assertEquals("holds", answer.get("limits").get(0).get("outcome").asString());
        assertEquals("flowing", answer.get("stopFlowing").get(0).get("station").asString());
        assertTrue(answer.get("balanceDiscrepancy").asDouble() < 1e-6);
        assertTrue(answer.get("largestLossOfHead").get("metres").asDouble() > 1);
    }

    @Test
    void runsEachCaseIntoAFolderOfItsOwn() throws IOException {
        change("limits:", "cases: [without any taking, existing as used]\nlimits:");
        Answer answer = headfall("run", folder.toString(), "--threads", "1").exits(0);
        for (String name : List.of("without-any-taking", "existing-as-used")) {
            assertTrue(Files.size(results.resolve(name).resolve("limits.csv")) > 0, name);
            assertTrue(answer.out().contains("Written to " + results.resolve(name)), answer.out());
        }
        assertTrue(Files.size(results.resolve("limits-by-case.csv")) > 0);
        String[] lines = answer.out().lines().toArray(String[]::new);
        int head = List.of(lines)
                .indexOf("Case                               limits  kept  crossed  undecided  not judged");
        assertTrue(head > 0, answer.out());
        assertEquals(
                "without any taking                      1     1        0          0           0", lines[head + 1]);
        assertTrue(lines[head + 2].startsWith("  closest: "), lines[head + 2]);
        assertTrue(
                List.of(lines).subList(head, lines.length).stream()
                        .anyMatch(line -> line.startsWith("existing as used                        1")),
                answer.out());
        headfall("run", folder.toString()).exits(1);
        answer = headfall("run", folder.toString(), "--overwrite", "--json").exits(0);
        assertTrue(answer.out().contains("\"without any taking\""), answer.out());
    }

    @Test
    void keepsResultsUnlessAskedToReplaceThem() throws IOException {
        headfall("run", folder.toString(), "--quiet").exits(0);
        byte[] before = Files.readAllBytes(results.resolve("report.html"));
        change("rate: 40 L/s", "rate: 10 L/s");
        Answer answer = headfall("run", folder.toString()).exits(1);
        assertTrue(answer.err().contains("results exist; they are kept"), answer.err());
        assertTrue(answer.err().contains("replace them with --overwrite"), answer.err());
        assertArrayEquals(before, Files.readAllBytes(results.resolve("report.html")));
        headfall("run", folder.toString(), "--overwrite").exits(0);
        assertFalse(java.util.Arrays.equals(before, Files.readAllBytes(results.resolve("report.html"))));
    }

    @Test
    void putsResultsWhereAsked() {
        Path elsewhere = folder.resolve("a").resolve("b");
        headfall("run", folder.toString(), "--output", elsewhere.toString(), "--quiet")
                .exits(0);
        assertTrue(Files.isRegularFile(elsewhere.resolve("report.html")));
        assertFalse(Files.exists(results));
    }

    @Test
    void failsOnACrossedLimitOnlyIfAsked() throws IOException {
        change("at_most: 20 m", "at_most: 0.5 m");
        Answer answer = headfall("run", folder.toString()).exits(0);
        assertTrue(answer.out().contains("The field does not hold: the one limit is crossed."), answer.out());
        assertTrue(answer.out().contains("  crossed: pool keeps its head, at pool, from 2026-"), answer.out());
        headfall("run", folder.toString(), "--fail-on-limit", "--overwrite").exits(3);
        headfall("run", folder.toString(), "--fail-on-limit", "--overwrite", "--quiet")
                .exits(3);
    }

    @Test
    void refusesABadScenarioAndWritesNothing() throws IOException {
        change("storativity: 2.0e-4", "storativity: -2.0e-4");
        Answer answer = headfall("run", folder.toString(), "--json").exits(1);
        assertTrue(answer.err().contains("scenario.yaml:11:16: aquifer.storativity"), answer.err());
        JsonNode problem =
                JsonMapper.shared().readTree(answer.out()).get("problems").get(0);
        assertEquals(11, problem.get("line").asInt());
        assertEquals("OUT_OF_RANGE", problem.get("kind").asString());
        assertFalse(Files.exists(results.getParent()));
    }

    @Test
    void refusesAScenarioWithoutAPlaceToComputeFor() throws IOException {
        String text = Files.readString(document);
        Files.writeString(document, text.substring(0, text.indexOf("springs:")) + "start: {steady: without bores}\n");
        Answer answer = headfall("check", folder.toString()).exits(1);
        assertTrue(answer.err().contains("no bore, no spring and no protected point"), answer.err());
        headfall("run", folder.toString()).exits(1);
    }

    @Test
    void refusesAScenarioThatIsNotThere() {
        Answer answer = headfall("run", folder.resolve("nowhere").toString()).exits(1);
        assertTrue(answer.err().contains("does not exist"), answer.err());
    }

    @Test
    void refusesFilesOutsideItsFolderUnlessAllowed() throws IOException {
        Path inner = Files.createDirectory(folder.resolve("inner"));
        Files.writeString(folder.resolve("rain.csv"), "date,rate (mm/yr)\n2026-07-01,1\n");
        change("springs:", "recharge:\n  - {name: rain, rate: {file: ../rain.csv, column: rate}}\nsprings:");
        Files.move(document, inner.resolve("scenario.yaml"));
        Answer answer = headfall("run", inner.toString()).exits(1);
        assertTrue(answer.err().contains("is outside the folder"), answer.err());
        headfall("run", inner.toString(), "--allow-outside-files").exits(0);
    }

    @Test
    void refusesAnOutputFolderThatCannotBeMade() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "not a folder");
        Answer answer = headfall(
                        "run",
                        folder.toString(),
                        "--output",
                        file.resolve("results").toString(),
                        "--json")
                .exits(1);
        assertTrue(answer.err().contains("cannot be written"), answer.err());
        assertTrue(JsonMapper.shared()
                .readTree(answer.out())
                .get("error")
                .asString()
                .contains("cannot be written"));
    }

    @Test
    void neverReplacesTheScenarioWithResults() throws IOException {
        String before = Files.readString(document);
        for (Path place : List.of(document, folder)) {
            Answer answer = headfall("run", folder.toString(), "--output", place.toString(), "--overwrite")
                    .exits(1);
            assertTrue(answer.err().contains("it is kept"), answer.err());
            assertEquals(before, Files.readString(document));
        }
    }

    @Test
    void refusesAThreadCountThatMakesNoSense() {
        headfall("run", folder.toString(), "--threads", "0").exits(2);
        headfall("run", folder.toString(), "--threads", "100000").exits(2);
        headfall("run", folder.toString(), "--threads", "many").exits(2);
    }

    @Test
    void writesTheReportAgainFromTheFolderAlone() throws IOException {
        headfall("run", folder.toString(), "--quiet").exits(0);
        String before = Files.readString(results.resolve("report.html"));
        Files.delete(results.resolve("report.html"));
        Files.delete(document);
        headfall("report", results.toString()).exits(0);
        assertEquals(before, Files.readString(results.resolve("report.html")));
        Path copy = folder.resolve("copy.html");
        headfall("report", results.toString(), "--output", copy.toString()).exits(0);
        assertEquals(before, Files.readString(copy));
    }

    @Test
    void refusesToReportAFolderWithoutResults() {
        Answer answer = headfall("report", folder.toString()).exits(1);
        assertTrue(answer.err().contains("holds no finished results"), answer.err());
    }
}
