package org.headfall.scenarios.results;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ResultsFolderTest {

    @TempDir
    Path parent;

    private void finish(boolean overwrite, String text) throws IOException {
        try (ResultsFolder folder = ResultsFolder.open(parent.resolve("run"), overwrite, WrittenFiles.OF_A_RUN)) {
            Files.writeString(folder.file("limits.csv"), text);
            folder.complete();
        }
    }

    private String content() throws IOException {
        return Files.readString(parent.resolve("run/limits.csv"));
    }

    @Test
    void takesItsFinalNameOnlyWhenComplete() throws IOException {
        try (ResultsFolder folder = ResultsFolder.open(parent.resolve("run"), false, WrittenFiles.OF_A_RUN)) {
            Files.writeString(folder.file("limits.csv"), "x");
            assertFalse(Files.exists(parent.resolve("run")));
            folder.complete();
        }
        assertEquals("x", content());
        assertFalse(Files.exists(parent.resolve("run.part")));
        assertFalse(Files.exists(parent.resolve("run/.lock")));
    }

    @Test
    void keepsExistingResultsUnlessOverwritingIsAsked() throws IOException {
        finish(false, "old");
        ResultsException e = assertThrows(ResultsException.class, () -> finish(false, "new"));
        assertEquals(ResultsException.Kind.EXISTS, e.kind());
        assertEquals("old", content());
        finish(true, "new");
        assertEquals("new", content());
        assertFalse(Files.exists(parent.resolve("run.replaced")));
    }

    @Test
    void keepsTheOldResultsWhenTheNewRunDoesNotFinish() throws IOException {
        finish(false, "old");
        try (ResultsFolder folder = ResultsFolder.open(parent.resolve("run"), true, WrittenFiles.OF_A_RUN)) {
            Files.writeString(folder.file("limits.csv"), "half");
        }
        assertEquals("old", content());
    }

    @Test
    void restoresResultsFromAReplacementThatWasInterrupted() throws IOException {
        finish(false, "old");
        Files.move(parent.resolve("run"), parent.resolve("run.replaced"));
        assertThrows(ResultsException.class, () -> finish(false, "new"));
        assertEquals("old", content());
    }

    @Test
    void refusesToCompleteWithAnUnfinishedFile() throws IOException {
        try (ResultsFolder folder = ResultsFolder.open(parent.resolve("run"), false, WrittenFiles.OF_A_RUN)) {
            Files.writeString(folder.file("heads.nc.part"), "half");
            assertThrows(IllegalStateException.class, folder::complete);
        }
        assertFalse(Files.exists(parent.resolve("run")));
    }

    @Test
    void refusesASecondRunIntoTheSameFolder() throws IOException {
        try (ResultsFolder folder = ResultsFolder.open(parent.resolve("run"), false, WrittenFiles.OF_A_RUN)) {
            Files.writeString(folder.file("limits.csv"), "first");
            ResultsException e = assertThrows(
                    ResultsException.class,
                    () -> ResultsFolder.open(parent.resolve("run"), false, WrittenFiles.OF_A_RUN));
            assertEquals(ResultsException.Kind.IN_USE, e.kind());
            assertTrue(Files.exists(folder.file("limits.csv")), "the first run keeps its files");
        }
    }

    @Test
    void nothingIsWrittenIntoOtherResults() throws IOException {
        finish(false, "old");
        Files.writeString(parent.resolve("run/summary.json"), "{}");
        for (String inner : new String[] {"run/comparison", "run/a/b"}) {
            ResultsException e = assertThrows(
                    ResultsException.class,
                    () -> ResultsFolder.open(parent.resolve(inner), false, WrittenFiles.OF_A_RUN));
            assertEquals(ResultsException.Kind.FOREIGN, e.kind());
            assertFalse(Files.exists(parent.resolve(inner + ".part")), inner);
        }
    }

    /** What a file system says is passed on without names of classes. */
    @Test
    void refusalsAreInWords() {
        Path place = parent.resolve("run");
        for (IOException failure : List.of(
                new AccessDeniedException(place.toString()),
                new NoSuchFileException(place.toString()),
                new FileSystemException(place.toString(), null, "Read-only file system"),
                new FileSystemException(place.toString()))) {
            ResultsException e = ResultsFolder.explained(failure, place);
            assertEquals(ResultsException.Kind.NOT_WRITABLE, e.kind());
            assertFalse(e.getMessage().contains("Exception") || e.getMessage().contains("null"), e.getMessage());
        }
    }

    @Test
    void namesAPlaceThatCannotHoldAFolder() throws IOException {
        Files.writeString(parent.resolve("file"), "x");
        ResultsException e = assertThrows(
                ResultsException.class,
                () -> ResultsFolder.open(parent.resolve("file/run"), false, WrittenFiles.OF_A_RUN));
        assertEquals(ResultsException.Kind.NOT_WRITABLE, e.kind());
        assertTrue(e.getMessage().contains("file/run"), e.getMessage());
    }

    @Test
    void saysBeforeTheWorkThatTheDiskIsTooSmall() throws IOException {
        try (ResultsFolder folder = ResultsFolder.open(parent.resolve("run"), false, WrittenFiles.OF_A_RUN)) {
            ResultsException e = assertThrows(ResultsException.class, () -> folder.requireSpace(Long.MAX_VALUE / 2));
            assertEquals(ResultsException.Kind.DISK_FULL, e.kind());
        }
    }

    private void assertKept(Path place, String expected) {
        for (boolean overwrite : new boolean[] {false, true}) {
            ResultsException e = assertThrows(
                    ResultsException.class, () -> ResultsFolder.open(place, overwrite, WrittenFiles.OF_A_RUN));
            assertEquals(ResultsException.Kind.FOREIGN, e.kind(), e.getMessage());
            assertTrue(e.getMessage().contains(expected), e.getMessage());
        }
    }

    @Test
    void neverReplacesAFile() throws IOException {
        Path file = Files.writeString(parent.resolve("scenario.yaml"), "title: x");
        assertKept(file, "is no folder");
        assertEquals("title: x", Files.readString(file));
        assertFalse(Files.exists(parent.resolve("scenario.yaml.part")));
    }

    @Test
    void neverReplacesAFolderWithAnythingThatNoRunHasWritten() throws IOException {
        finish(false, "old");
        for (String name : new String[] {"scenario.yaml", "notes.txt", "limits.csv.old", "head-mine.tif"}) {
            Path foreign = Files.writeString(parent.resolve("run").resolve(name), "mine");
            assertKept(parent.resolve("run"), "(" + name + ")");
            assertEquals("mine", Files.readString(foreign));
            Files.delete(foreign);
        }
        Files.createDirectory(parent.resolve("run/bores.csv"));
        assertKept(parent.resolve("run"), "(bores.csv)");
        Files.delete(parent.resolve("run/bores.csv"));
        finish(true, "new");
        assertEquals("new", content());
    }

    @Test
    void neverClearsForeignFilesFromTheFoldersBeside() throws IOException {
        for (String beside : new String[] {"run.part", "run.replaced"}) {
            finish(true, "old");
            Path foreign = Files.writeString(
                    Files.createDirectory(parent.resolve(beside)).resolve("notes.txt"), "mine");
            assertKept(parent.resolve("run"), beside);
            assertEquals("mine", Files.readString(foreign));
            assertEquals("old", content());
            Files.delete(foreign);
            Files.delete(parent.resolve(beside));
        }
    }

    @Test
    void keepsAFileThatCameDuringTheRun() throws IOException {
        finish(false, "old");
        try (ResultsFolder folder = ResultsFolder.open(parent.resolve("run"), true, WrittenFiles.OF_A_RUN)) {
            Files.writeString(folder.file("limits.csv"), "new");
            Files.writeString(parent.resolve("run/notes.txt"), "mine");
            ResultsException e = assertThrows(ResultsException.class, folder::complete);
            assertEquals(ResultsException.Kind.FOREIGN, e.kind());
        }
        assertEquals("mine", Files.readString(parent.resolve("run/notes.txt")));
        assertEquals("old", content());
        assertEquals("new", Files.readString(parent.resolve("run.part/limits.csv")));
    }

    @Test
    void refusesTheRootOfTheFileSystem() {
        assertKept(parent.getRoot(), "is no place for results");
    }

    @Test
    void fillsAFolderThatIsEmpty() throws IOException {
        Files.createDirectory(parent.resolve("run"));
        finish(false, "new");
        assertEquals("new", content());
    }

    @Test
    void replacesResultsBehindALinkAndKeepsTheLink() throws IOException {
        finish(false, "old");
        Path link = Files.createSymbolicLink(parent.resolve("latest"), parent.resolve("run"));
        try (ResultsFolder folder = ResultsFolder.open(link, true, WrittenFiles.OF_A_RUN)) {
            Files.writeString(folder.file("limits.csv"), "new");
            folder.complete();
        }
        assertEquals("new", content());
        assertTrue(Files.isSymbolicLink(link));
    }
}
