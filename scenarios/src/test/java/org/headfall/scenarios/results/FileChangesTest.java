package org.headfall.scenarios.results;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.headfall.scenarios.document.FileHash;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileChangesTest {

    @TempDir
    private Path folder;

    @BeforeEach
    void write() throws IOException {
        RunDescription description = SmallField.description();
        NetcdfRulesTest.write(folder, description);
        FinishedRun run = FinishedField.run(description);
        Tables.write(folder, run);
        new SummaryFile().write(folder, run);
    }

    /** The hash of "abc": FIPS 180-2, appendix B.1. */
    @Test
    void hashesAreThoseOfTheStandard() throws IOException {
        byte[] abc = "abc".getBytes(StandardCharsets.US_ASCII);
        String published = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assertEquals(published, FileHash.of(abc));
        assertEquals(published, FileHash.of(Files.write(folder.resolve("abc"), abc)));
    }

    @Test
    void aFinishedFolderHasNone() throws IOException {
        assertEquals(none(), FileChanges.in(folder));
    }

    private FileChanges none() {
        return new FileChanges(folder, Map.of(), List.of(), List.of());
    }

    @Test
    void oneChangedByteIsFoundInEveryFile() throws IOException {
        for (String name : FileStamp.names(folder)) {
            Path file = folder.resolve(name);
            byte[] whole = Files.readAllBytes(file);
            byte[] changed = whole.clone();
            changed[whole.length / 2] ^= 1;
            Files.write(file, changed);
            assertEquals(Set.of(name), FileChanges.in(folder).changed().keySet());
            Files.write(file, whole);
        }
        assertEquals(none(), FileChanges.in(folder));
    }

    @Test
    void theSummaryKnowsItselfAgain() throws IOException {
        Path summary = folder.resolve(SummaryFile.NAME);
        Files.writeString(summary, Files.readString(summary).replaceFirst("\"datum\" : \"", "$0x"));
        assertEquals(Set.of(SummaryFile.NAME), FileChanges.in(folder).changed().keySet());
        ResultsException e = assertThrows(ResultsException.class, () -> new ResultsReader().read(folder));
        assertEquals(ResultsException.Kind.DAMAGED, e.kind());
        assertEquals(summary.toString(), e.place());
    }

    @Test
    void missingAndForeignFilesAreNamed() throws IOException {
        Files.delete(folder.resolve("decline.csv"));
        Files.writeString(folder.resolve("notes.txt"), "seen");
        FileChanges changes = FileChanges.in(folder);
        assertEquals(List.of("decline.csv"), changes.missing());
        assertEquals(List.of("notes.txt"), changes.added());
        assertTrue(changes.changed().isEmpty());
    }

    @Test
    void aChangedFileIsRefusedWithAllOthersNamed() throws IOException {
        for (String name : List.of("heads.nc", "limits.csv")) {
            Files.writeString(folder.resolve(name), "x", StandardOpenOption.APPEND);
        }
        ResultsException e = assertThrows(ResultsException.class, () -> new ResultsReader().read(folder));
        assertEquals(folder.resolve("heads.nc").toString(), e.place());
        List<String> read = List.of("limits.csv");
        FileChanges changes = FileChanges.in(folder);
        String message = String.valueOf(assertThrows(ResultsException.class, () -> changes.requireUnchanged(read))
                .getMessage());
        assertTrue(message.contains("changed as well: heads.nc"), message);
        assertTrue(message.contains("copy the folder anew or run the scenario again"), message);
        changes.requireUnchanged(List.of("bores.nc"));
    }

    /** A reviewer's entries cannot be made again, so new results do not take their place. */
    @Test
    void aReviewThatWasFilledInIsNotReplaced(@TempDir Path elsewhere) throws IOException {
        Path results = elsewhere.resolve("run");
        try (ResultsFolder open = ResultsFolder.open(results, false, WrittenFiles.OF_A_RUN)) {
            Files.writeString(open.file("review.csv"), "item,found\r\nbalance,\r\n");
            new SummaryFile().write(open.file(""), FinishedField.run(SmallField.description()));
            open.complete();
        }
        ResultsFolder.open(results, true, WrittenFiles.OF_A_RUN).close();
        Files.writeString(results.resolve("review.csv"), "item,found\r\nbalance,closed by my sum\r\n");
        ResultsException e =
                assertThrows(ResultsException.class, () -> ResultsFolder.open(results, true, WrittenFiles.OF_A_RUN));
        assertEquals(ResultsException.Kind.FOREIGN, e.kind());
        assertEquals(results.toRealPath().resolve("review.csv").toString(), e.place());
        assertTrue(Files.readString(results.resolve("review.csv")).contains("my sum"));
    }

    /** Maps that the run wrote and that are gone are no sign of an answer from unit responses. */
    @Test
    void missingMapsAreNotGuessedAbout() throws IOException {
        Files.delete(folder.resolve("heads.nc"));
        String message = String.valueOf(assertThrows(ResultsException.class, () -> new ResultsReader().read(folder))
                .getMessage());
        assertTrue(message.contains("heads.nc is missing; copy the folder anew"), message);
    }

    @Test
    void aFileMadeAgainCountsAsWritten() throws IOException {
        Files.writeString(folder.resolve("decline.csv"), "x\r\n");
        new SummaryFile().writtenAgain(folder, "decline.csv");
        assertEquals(none(), FileChanges.in(folder));
    }
}
