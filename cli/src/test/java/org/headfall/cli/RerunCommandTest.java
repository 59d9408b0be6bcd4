package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.headfall.scenarios.results.KeptInputs;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.SummaryFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code rerun} on results of src/test/resources/scenario/two-bores. */
class RerunCommandTest {

    private static final String ADVICE = "copy the folder anew or run the scenario again (headfall run)";

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @TempDir
    private Path folder;

    private Path results;

    @BeforeEach
    void runScenario() throws IOException, URISyntaxException {
        Path document = folder.resolve("scenario.yaml");
        Files.copy(
                Path.of(RerunCommandTest.class
                        .getResource("/scenario/two-bores/scenario.yaml")
                        .toURI()),
                document);
        results = folder.resolve("results").resolve("scenario");
        assertEquals(0, headfall("run", folder.toString(), "--threads", "2"), err::toString);
        Files.delete(document);
    }

    private int headfall(String... arguments) {
        out.getBuffer().setLength(0);
        err.getBuffer().setLength(0);
        return Headfall.execute(Terminal.NONE, new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    }

    @Test
    void theSameNumbersComeOfTheKeptInputsWithAnyNumberOfThreads() {
        assertEquals(0, headfall("rerun", results.toString(), "--threads", "1"), err::toString);
        assertTrue(out.toString().startsWith("Identical: "), out::toString);
    }

    /** The other run's file is as long as the one that it takes the place of; another length would be noticed before. */
    @Test
    void theFirstNumberThatDiffersIsNamed() throws IOException {
        Path other = folder.resolve("changing.yaml");
        String text = Files.readString(copyOfDocument());
        Files.writeString(other, text.replaceFirst("rate: 40", "rate: 41"));
        assertEquals(0, headfall("run", other.toString()), err::toString);
        for (String name : List.of("heads.nc", "bores.nc")) {
            Path changed = folder.resolve("results").resolve("changing").resolve(name);
            Files.copy(changed, results.resolve(name), StandardCopyOption.REPLACE_EXISTING);
        }
        assertEquals(1, headfall("rerun", results.toString(), "--quiet"), err::toString);
        String said = oneLine(out.toString());
        assertTrue(said.contains("changed: bores.nc, heads.nc "), said);
        assertTrue(said.contains("Not identical: 2 of "), said);
        assertTrue(said.contains("the first at hydraulic_head (m), time 2026-08-01, station pumped: "), said);
        assertTrue(said.contains("the first at hydraulic_head (m), time 2027-07-01, y "), said);
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\s+", " ");
    }

    /** Puts one digit in place of another, so that the file keeps its size. */
    private static void spoil(Path table, int line) throws IOException {
        String[] lines = Files.readString(table).split("(?<=\n)", -1);
        String digits = lines[line - 1].replaceFirst("(\\d)(?=\\.\\d)", "x");
        assertNotEquals(lines[line - 1], digits);
        lines[line - 1] = digits.replaceFirst("x", lines[line - 1].contains("7.") ? "4" : "7");
        Files.writeString(table, String.join("", lines));
    }

    /** What a regulator could be handed: tables edited, one taken away, one that is none of the run. */
    @Test
    void editedMissingAndForeignFilesAreNamed() throws IOException {
        spoil(results.resolve("limits.csv"), 2);
        spoil(results.resolve("recovery.csv"), 3);
        Files.delete(results.resolve("decline.csv"));
        Files.writeString(results.resolve("accounts.csv"), "name\r\n");
        Files.writeString(
                results.resolve("report.html"),
                Files.readString(results.resolve("report.html")).replace("Two bores", "Few bores"));
        assertEquals(1, headfall("rerun", results.toString(), "--quiet"), err::toString);
        String said = oneLine(out.toString());
        assertTrue(said.contains("changed: limits.csv, recovery.csv, report.html "), said);
        assertTrue(said.contains("missing: decline.csv "), said);
        assertTrue(said.contains("not of the run: accounts.csv "), said);
        assertTrue(said.contains("Not identical: 3 of "), said);
        assertTrue(said.contains("decline.csv: is not in the results"), said);
        assertTrue(
                said.matches(".*limits.csv: 1 of \\d+ values differ, the first at line 2 \\(pool keeps its head, .*"),
                said);
        assertTrue(out.toString().lines().allMatch(line -> line.length() <= 80 || !line.contains(" ")), said);
    }

    /** Hashes can be made anew by whoever changes a number; the numbers that the run gives cannot. */
    @Test
    void aSummaryThatWasChangedTogetherWithItsHashIsFoundByTheNumbers() throws IOException {
        spoil(results.resolve("limits.csv"), 2);
        new SummaryFile().writtenAgain(results, "limits.csv");
        assertEquals(1, headfall("rerun", results.toString(), "--quiet"), err::toString);
        assertTrue(out.toString().startsWith("Not identical: 1 of "), out::toString);
    }

    /** Each forged with its hash, so that only the rerun can tell. */
    @Test
    void forgedFilesStepsAndUnitsAreFoundByTheRerun() throws IOException {
        Files.writeString(results.resolve("accounts.csv"), "bore,taken (ML)\r\npumped,0\r\n");
        replace(results.resolve("bores.nc"), "Levels are above datum", "Levels are below datum");
        replace(results.resolve("summary.json"), "\"rejectedSteps\" : ", "\"rejectedSteps\" : 7");
        for (String name : List.of("accounts.csv", "bores.nc")) {
            new SummaryFile().writtenAgain(results, name);
        }
        assertEquals(1, headfall("rerun", results.toString(), "--quiet"), err::toString);
        String said = oneLine(out.toString());
        assertTrue(said.startsWith("Not identical: 3 of "), said);
        assertTrue(said.contains("accounts.csv: the run gives no such file"), said);
        assertTrue(said.contains("the first at attribute comment: Levels are below datum"), said);
        assertTrue(said.contains("the first at figures.solver.rejectedSteps: 7"), said);
    }

    private static void replace(Path file, String text, String instead) throws IOException {
        String bytes = Files.readString(file, StandardCharsets.ISO_8859_1);
        assertTrue(bytes.contains(text), text);
        Files.writeString(file, bytes.replace(text, instead), StandardCharsets.ISO_8859_1);
    }

    /** Copied in from another run, or made by hand: no hash of this run can vouch for it. */
    @Test
    void aFileThatTheRunNeverWroteIsNotRead() throws IOException {
        Path summary = results.resolve("summary.json");
        String text = Files.readString(summary);
        Files.writeString(summary, text.replaceFirst("\"responses.nc\" : ", "\"other.nc\" : "));
        new SummaryFile().writtenAgain(results, "limits.csv");
        assertEquals(1, headfall("estimate", copyOfDocument().toString(), "--responses", results.toString()));
        assertTrue(err.toString().contains("responses.nc: is not of this run"), err::toString);
    }

    @Test
    void aNoteBesideTheResultsIsNoFaultOfThem() throws IOException {
        Files.writeString(results.resolve("notes.txt"), "seen");
        Files.writeString(results.resolve(".left-by-the-system"), "");
        assertEquals(0, headfall("rerun", results.toString(), "--quiet"), err::toString);
        assertTrue(oneLine(out.toString()).contains("not of the run: notes.txt "), out::toString);
        assertEquals(0, headfall("report", results.toString()), err::toString);
        assertTrue(oneLine(err.toString()).contains("not of the run: notes.txt "), err::toString);
    }

    @Test
    void commandsWarnOfTablesAndRefuseWhatTheyRead() throws IOException {
        Path document = folder.resolve("scenario.yaml");
        Files.copy(copyOfDocument(), document);
        spoil(results.resolve("limits.csv"), 2);
        String[][] commands = {
            {"heads.nc", "report", results.toString()},
            {"responses.nc", "report", results.toString()},
            {"discharges.nc", "report", results.toString()},
            {"bores.nc", "compare", results.toString(), results.toString(), "--overwrite"},
            {"responses.nc", "estimate", document.toString(), "--overwrite"},
            {"responses.nc", "capping", document.toString(), "--overwrite"},
            {"responses.nc", "monitor", document.toString(), "--overwrite"},
            {"summary.json", "monitor", document.toString(), "--overwrite"}
        };
        for (String[] command : commands) {
            String[] arguments = Arrays.copyOfRange(command, 1, command.length);
            boolean beside = command[1].equals("compare");
            String[] whole = beside ? withOutput(arguments) : arguments;
            assertEquals(0, headfall(whole), err::toString);
            assertTrue(
                    oneLine(err.toString()).contains("not as the run left them: changed: limits.csv"), err::toString);
            Path file = results.resolve(command[0]);
            byte[] bytes = Files.readAllBytes(file);
            byte[] changed = bytes.clone();
            changed[changed.length - 3] ^= 1;
            Files.write(file, changed);
            assertEquals(1, headfall(whole), () -> String.join(" ", command) + err);
            assertTrue(err.toString().contains(file.toString()), err::toString);
            assertTrue(err.toString().contains(ADVICE), err::toString);
            Files.write(file, bytes);
        }
    }

    private String[] withOutput(String... arguments) {
        return Stream.concat(
                        Arrays.stream(arguments),
                        Stream.of("--output", folder.resolve("beside").toString()))
                .toArray(String[]::new);
    }

    /** The page is made of the results, so writing it again is no change of them. */
    @Test
    void aReportWrittenAgainCountsAsOfTheRun() throws IOException {
        Files.delete(results.resolve("report.html"));
        assertEquals(0, headfall("report", results.toString()), err::toString);
        Path beside = results.resolve("..").resolve("scenario").resolve("report.html");
        assertEquals(0, headfall("report", results.toString(), "--output", beside.toString()), err::toString);
        assertEquals(0, headfall("rerun", results.toString(), "--quiet"), out::toString);
    }

    private Path copyOfDocument() throws IOException {
        Path copy = folder.resolve("copy");
        KeptInputs.unpack(results, copy);
        return copy.resolve("scenario.yaml");
    }

    @Test
    void inputsThatWereChangedAreRefused() throws IOException {
        String text = Files.readString(copyOfDocument());
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(results.resolve("inputs.zip")))) {
            zip.putNextEntry(new ZipEntry("scenario.yaml"));
            zip.write(text.replace("title: ", "title: another ").getBytes(StandardCharsets.UTF_8));
        }
        assertEquals(1, headfall("rerun", results.toString(), "--quiet"));
        assertTrue(
                err.toString().contains("scenario.yaml is not the file that the results were made of"), err::toString);
    }

    @Test
    void allCasesOfADocumentAreProvedAndOtherCommandsNameTheirFolders() throws IOException {
        Path document = folder.resolve("cases.yaml");
        String limit =
                "  - {name: beside, quantity: drawdown, at: pool, cause: everyone, compared_with: without any taking,"
                        + " when: ever, at_most: 9 m}\n";
        String text = Files.readString(copyOfDocument()).replace("\nstart:", "\n" + limit + "start:");
        Files.writeString(document, text + "\ncases: [without any taking, existing as used]\n");
        assertEquals(0, headfall("run", document.toString(), "--quiet", "--doubts"), err::toString);
        Path parent = folder.resolve("results").resolve("cases");
        assertEquals(0, headfall("rerun", parent.toString(), "--quiet"), out::toString);
        assertTrue(out.toString().startsWith("Identical: "), out::toString);
        Path one = parent.resolve("existing-as-used");
        assertEquals(0, headfall("rerun", one.toString(), "--quiet"), out::toString);
        Path foreign = Files.createDirectory(parent.resolve("with-proposal"));
        Files.copy(one.resolve("summary.json"), foreign.resolve("summary.json"));
        Files.writeString(parent.resolve("accounts.csv"), "name\r\n");
        spoil(parent.resolve("limits-by-case.csv"), 2);
        ResultsFolder.delete(parent.resolve("without-any-taking"));
        assertEquals(1, headfall("rerun", parent.toString(), "--quiet"), err::toString);
        assertTrue(oneLine(out.toString()).contains("limits-by-case.csv: 1 of "), out::toString);
        assertTrue(oneLine(out.toString()).contains("without-any-taking: this folder is missing"), out::toString);
        assertTrue(oneLine(out.toString()).contains("with-proposal: the document has no such case"), out::toString);
        assertTrue(oneLine(out.toString()).contains("not of the run: accounts.csv"), out::toString);
        String[][] commands = {
            {"report", parent.toString()},
            {
                "compare",
                results.toString(),
                parent.toString(),
                "--output",
                folder.resolve("beside").toString()
            },
            {"estimate", document.toString()}
        };
        for (String[] command : commands) {
            assertEquals(1, headfall(command), err::toString);
            assertTrue(err.toString().contains("existing-as-used"), err::toString);
        }
    }

    /** The end of a file that a full disk or a broken copy has cut off. */
    @Test
    void filesThatWereCutShortAreNamed() throws IOException {
        String[][] commands = {
            {"heads.nc", "report", results.toString()},
            {"bores.nc", "compare", results.toString(), results.toString()},
            {"discharges.nc", "report", results.toString()},
            {"responses.nc", "estimate", copyOfDocument().toString(), "--responses", results.toString()},
            {"inputs.zip", "rerun", results.toString()},
            {"summary.json", "compare", results.toString(), results.toString()}
        };
        for (String[] command : commands) {
            Path file = results.resolve(command[0]);
            byte[] whole = Files.readAllBytes(file);
            Files.write(file, Arrays.copyOf(whole, whole.length / 2));
            String[] arguments = Arrays.copyOfRange(command, 1, command.length);
            assertEquals(1, headfall(arguments), () -> command[0] + err);
            assertTrue(err.toString().contains(file.toString()), err::toString);
            assertTrue(err.toString().contains(ADVICE), err::toString);
            Files.write(file, whole);
        }
    }

    @Test
    void whatIsNoSummaryIsCalledSo() throws IOException {
        Path summary = results.resolve("summary.json");
        String current = Files.readString(summary).replaceAll("(?s).*\"format\" : (\\d+).*", "$1");
        String head = "{\"format\":" + current + ", \"toolVersion\":\"x\", \"files\":{}}";
        for (String text : List.of("", "null", "{}", "[]", "7", "{\"format\":\"a\"}", head)) {
            Files.writeString(summary, text);
            for (String command : List.of("rerun", "report")) {
                assertEquals(1, headfall(command, results.toString()), () -> text + err);
                assertTrue(err.toString().startsWith("headfall: " + summary + ": "), () -> text + err);
                assertTrue(err.toString().contains(ADVICE), () -> text + err);
            }
        }
    }

    /** Messages are one line for programs; on a terminal they are broken between words. */
    @Test
    void messagesFitATerminal() {
        Terminal terminal = new Terminal(true, true, false);
        String[] command = {"report", folder.toString(), "--output", folder.toString()};
        assertEquals(2, Headfall.execute(terminal, new PrintWriter(out, true), new PrintWriter(err, true), command));
        assertTrue(
                err.toString()
                        .lines()
                        .allMatch(line -> line.length() <= 80 || !line.strip().contains(" ")),
                err::toString);
    }

    /** A proof goes on as far as it can, and says what cannot be read. */
    @Test
    void aFileThatWasCutShortIsComparedAsFarAsItGoes() throws IOException {
        for (String name : List.of("bores.nc", "heads.nc", "drawdown-2031-07-01.tif", "bores.geojson")) {
            Path file = results.resolve(name);
            byte[] whole = Files.readAllBytes(file);
            Files.write(file, Arrays.copyOf(whole, whole.length / 2));
            assertEquals(1, headfall("rerun", results.toString(), "--quiet"), () -> name + err);
            assertTrue(out.toString().contains("changed: " + name), out::toString);
            assertTrue(out.toString().contains("Not identical: 1 of "), out::toString);
            Files.write(file, whole);
        }
    }

    @Test
    void aReportThatCannotBeWrittenLeavesNothingBehind() throws IOException {
        Path other = Files.createDirectory(folder.resolve("other"));
        assertEquals(2, headfall("report", results.toString(), "--output", other.toString()), err::toString);
        try (Stream<Path> files = Files.walk(folder)) {
            assertEquals(
                    List.of(),
                    files.filter(file -> file.toString().endsWith(".part")).toList());
        }
    }

    @Test
    void anEntryThatLeavesTheFolderIsRefused() throws IOException {
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(results.resolve("inputs.zip")))) {
            zip.putNextEntry(new ZipEntry("../escaped.yaml"));
        }
        assertEquals(1, headfall("rerun", results.toString(), "--quiet"));
        assertTrue(err.toString().contains("leaves its folder"), err::toString);
    }

    @Test
    void noCommandReplacesWhatItReadsFrom() {
        assertEquals(
                2,
                headfall(
                        "report",
                        results.toString(),
                        "--output",
                        results.resolve("heads.nc").toString()));
        assertEquals(2, headfall("report", results.toString(), "--output", folder.toString()));
        assertEquals(
                0,
                headfall(
                        "report",
                        results.toString(),
                        "--output",
                        folder.resolve("page.html").toString()));
        assertEquals(
                0,
                headfall(
                        "report",
                        results.toString(),
                        "--output",
                        folder.resolve("page.html").toString()));
        assertTrue(Files.exists(results.resolve("responses.nc")));
    }

    @Test
    void anEstimateDoesNotReplaceTheRunThatItIsAnsweredFrom() throws IOException {
        Path document = folder.resolve("scenario.yaml");
        Files.copy(copyOfDocument(), document);
        String[] command = {"estimate", folder.toString(), "--output", results.toString(), "--overwrite"};
        assertEquals(2, headfall(command), err::toString);
        assertTrue(Files.exists(results.resolve("heads.nc")));
        assertEquals(0, headfall("estimate", folder.toString()), err::toString);
        assertTrue(out.toString().contains("Answered from             the unit responses"), out::toString);
    }
}
