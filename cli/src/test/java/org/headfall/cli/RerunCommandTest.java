package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
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
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code rerun} on results of src/test/resources/scenario/two-bores. */
class RerunCommandTest {

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
        Path changed = folder.resolve("results").resolve("changing").resolve("bores.nc");
        Files.copy(changed, results.resolve("bores.nc"), StandardCopyOption.REPLACE_EXISTING);
        assertEquals(1, headfall("rerun", results.toString(), "--quiet"), err::toString);
        assertTrue(out.toString().startsWith("Not identical. First difference: "), out::toString);
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
        String cases = "\ncases: [without any taking, existing as used]\n";
        Files.writeString(document, Files.readString(copyOfDocument()) + cases);
        assertEquals(0, headfall("run", document.toString(), "--quiet"), err::toString);
        Path parent = folder.resolve("results").resolve("cases");
        assertEquals(0, headfall("rerun", parent.toString(), "--quiet"), err::toString);
        assertTrue(out.toString().contains("Case without-any-taking:"), out::toString);
        assertEquals(2, out.toString().split("Identical: ", -1).length - 1, out::toString);
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
            {"bores.nc", "rerun", results.toString()},
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
