package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
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
        headfall("run", folder.toString(), "--threads", "2").exits(0);
        Files.delete(document);
    }

    @Test
    void theSameNumbersComeOfTheKeptInputsWithAnyNumberOfThreads() {
        Answer answer = headfall("rerun", results.toString(), "--threads", "1").exits(0);
        assertTrue(answer.out().startsWith("Identical: "), answer.out());
    }

    /** The other run's file is as long as the one that it takes the place of; another length would be noticed before. */
    @Test
    void theFirstNumberThatDiffersIsNamed() throws IOException {
        Path other = folder.resolve("changing.yaml");
        String text = Files.readString(copyOfDocument());
        Files.writeString(other, text.replaceFirst("rate: 40", "rate: 41"));
        headfall("run", other.toString()).exits(0);
        for (String name : List.of("heads.nc", "bores.nc")) {
            Path changed = folder.resolve("results").resolve("changing").resolve(name);
            Files.copy(changed, results.resolve(name), StandardCopyOption.REPLACE_EXISTING);
        }
        Answer answer = headfall("rerun", results.toString(), "--quiet").exits(1);
        String said = answer.outInOneLine();
        assertTrue(said.contains("changed: bores.nc, heads.nc "), said);
        assertTrue(said.contains("Not identical: 2 of "), said);
        assertTrue(said.contains("the first at hydraulic_head (m), time 2026-08-01, station pumped: "), said);
        assertTrue(said.contains("the first at hydraulic_head (m), time 2027-07-01, y "), said);
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
        Answer answer = headfall("rerun", results.toString(), "--quiet").exits(1);
        String said = answer.outInOneLine();
        assertTrue(said.contains("changed: limits.csv, recovery.csv, report.html "), said);
        assertTrue(said.contains("missing: decline.csv "), said);
        assertTrue(said.contains("not of the run: accounts.csv "), said);
        assertTrue(said.contains("Not identical: 3 of "), said);
        assertTrue(said.contains("decline.csv: is not in the results"), said);
        assertTrue(
                said.matches(".*limits.csv: 1 of \\d+ values differ, the first at line 2 \\(pool keeps its head, .*"),
                said);
        assertTrue(answer.out().lines().allMatch(line -> line.length() <= 80 || !line.contains(" ")), said);
    }

    /** Hashes can be made anew by whoever changes a number; the numbers that the run gives cannot. */
    @Test
    void aSummaryThatWasChangedTogetherWithItsHashIsFoundByTheNumbers() throws IOException {
        spoil(results.resolve("limits.csv"), 2);
        new SummaryFile().writtenAgain(results, "limits.csv");
        Answer answer = headfall("rerun", results.toString(), "--quiet").exits(1);
        assertTrue(answer.out().startsWith("Not identical: 1 of "), answer.out());
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
        Answer answer = headfall("rerun", results.toString(), "--quiet").exits(1);
        String said = answer.outInOneLine();
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
        Answer answer = headfall("estimate", copyOfDocument().toString(), "--responses", results.toString())
                .exits(1);
        assertTrue(answer.err().contains("responses.nc: is not of this run"), answer.err());
    }

    @Test
    void aNoteBesideTheResultsIsNoFaultOfThem() throws IOException {
        Files.writeString(results.resolve("notes.txt"), "seen");
        Files.writeString(results.resolve(".left-by-the-system"), "");
        Answer answer = headfall("rerun", results.toString(), "--quiet").exits(0);
        assertTrue(answer.outInOneLine().contains("not of the run: notes.txt "), answer.out());
        answer = headfall("report", results.toString()).exits(0);
        assertTrue(answer.errInOneLine().contains("not of the run: notes.txt "), answer.err());
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
            Answer answer = headfall(whole).exits(0);
            assertTrue(answer.errInOneLine().contains("not as the run left them: changed: limits.csv"), answer.err());
            Path file = results.resolve(command[0]);
            byte[] bytes = Files.readAllBytes(file);
            byte[] changed = bytes.clone();
            changed[changed.length - 3] ^= 1;
            Files.write(file, changed);
            answer = headfall(whole).exits(1);
            assertTrue(answer.err().contains(file.toString()), answer.err());
            assertTrue(answer.err().contains(ADVICE), answer.err());
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
        headfall("report", results.toString()).exits(0);
        Path beside = results.resolve("..").resolve("scenario").resolve("report.html");
        headfall("report", results.toString(), "--output", beside.toString()).exits(0);
        headfall("rerun", results.toString(), "--quiet").exits(0);
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
        Answer answer = headfall("rerun", results.toString(), "--quiet").exits(1);
        assertTrue(answer.err().contains("scenario.yaml is not the file that the results were made of"), answer.err());
    }

    @Test
    void allCasesOfADocumentAreProvedAndOtherCommandsNameTheirFolders() throws IOException {
        Path document = folder.resolve("cases.yaml");
        String limit =
                "  - {name: beside, quantity: drawdown, at: pool, cause: everyone, compared_with: without any taking,"
                        + " when: ever, at_most: 9 m}\n";
        String text = Files.readString(copyOfDocument()).replace("\nstart:", "\n" + limit + "start:");
        Files.writeString(document, text + "\ncases: [without any taking, existing as used]\n");
        headfall("run", document.toString(), "--quiet", "--doubts").exits(0);
        Path parent = folder.resolve("results").resolve("cases");
        Answer answer = headfall("rerun", parent.toString(), "--quiet").exits(0);
        assertTrue(answer.out().startsWith("Identical: "), answer.out());
        Path one = parent.resolve("existing-as-used");
        headfall("rerun", one.toString(), "--quiet").exits(0);
        Path foreign = Files.createDirectory(parent.resolve("with-proposal"));
        Files.copy(one.resolve("summary.json"), foreign.resolve("summary.json"));
        Files.writeString(parent.resolve("accounts.csv"), "name\r\n");
        spoil(parent.resolve("limits-by-case.csv"), 2);
        ResultsFolder.delete(parent.resolve("without-any-taking"));
        answer = headfall("rerun", parent.toString(), "--quiet").exits(1);
        assertTrue(answer.outInOneLine().contains("limits-by-case.csv: 1 of "), answer.out());
        assertTrue(answer.outInOneLine().contains("without-any-taking: this folder is missing"), answer.out());
        assertTrue(answer.outInOneLine().contains("with-proposal: the document has no such case"), answer.out());
        assertTrue(answer.outInOneLine().contains("not of the run: accounts.csv"), answer.out());
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
            answer = headfall(command).exits(1);
            assertTrue(answer.err().contains("existing-as-used"), answer.err());
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
            Answer answer = headfall(arguments).exits(1);
            assertTrue(answer.err().contains(file.toString()), answer.err());
            assertTrue(answer.err().contains(ADVICE), answer.err());
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
                Answer answer = headfall(command, results.toString()).exits(1);
                assertTrue(answer.err().startsWith("headfall: " + summary + ": "), text + answer.err());
                assertTrue(answer.err().contains(ADVICE), text + answer.err());
            }
        }
    }

    /** Messages are one line for programs; on a terminal they are broken between words. */
    @Test
    void messagesFitATerminal() {
        Terminal terminal = new Terminal(true, true, false);
        Answer answer = headfall(terminal, "report", folder.toString(), "--output", folder.toString())
                .exits(2);
        assertTrue(
                answer.err()
                        .lines()
                        .allMatch(line -> line.length() <= 80 || !line.strip().contains(" ")),
                answer.err());
    }

    /** A proof goes on as far as it can, and says what cannot be read. */
    @Test
    void aFileThatWasCutShortIsComparedAsFarAsItGoes() throws IOException {
        for (String name : List.of("bores.nc", "heads.nc", "drawdown-2031-07-01.tif", "bores.geojson")) {
            Path file = results.resolve(name);
            byte[] whole = Files.readAllBytes(file);
            Files.write(file, Arrays.copyOf(whole, whole.length / 2));
            Answer answer = headfall("rerun", results.toString(), "--quiet").exits(1);
            assertTrue(answer.out().contains("changed: " + name), answer.out());
            assertTrue(answer.out().contains("Not identical: 1 of "), answer.out());
            Files.write(file, whole);
        }
    }

    @Test
    void aReportThatCannotBeWrittenLeavesNothingBehind() throws IOException {
        Path other = Files.createDirectory(folder.resolve("other"));
        headfall("report", results.toString(), "--output", other.toString()).exits(2);
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
        Answer answer = headfall("rerun", results.toString(), "--quiet").exits(1);
        assertTrue(answer.err().contains("leaves its folder"), answer.err());
    }

    @Test
    void noCommandReplacesWhatItReadsFrom() {
        headfall(
                        "report",
                        results.toString(),
                        "--output",
                        results.resolve("heads.nc").toString())
                .exits(2);
        headfall("report", results.toString(), "--output", folder.toString()).exits(2);
        headfall(
                        "report",
                        results.toString(),
                        "--output",
                        folder.resolve("page.html").toString())
                .exits(0);
        headfall(
                        "report",
                        results.toString(),
                        "--output",
                        folder.resolve("page.html").toString())
                .exits(0);
        assertTrue(Files.exists(results.resolve("responses.nc")));
    }

    @Test
    void anEstimateDoesNotReplaceTheRunThatItIsAnsweredFrom() throws IOException {
        Path document = folder.resolve("scenario.yaml");
        Files.copy(copyOfDocument(), document);
        String[] command = {"estimate", folder.toString(), "--output", results.toString(), "--overwrite"};
        headfall(command).exits(2);
        assertTrue(Files.exists(results.resolve("heads.nc")));
        Answer answer = headfall("estimate", folder.toString()).exits(0);
        assertTrue(answer.out().contains("Answered from             the unit responses"), answer.out());
    }
}
