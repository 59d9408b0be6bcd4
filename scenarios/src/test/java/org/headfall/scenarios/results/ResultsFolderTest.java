package org.headfall.scenarios.results;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ResultsFolderTest {

    @TempDir
    Path parent;

    private void finish(boolean overwrite, String text) throws IOException {
        try (ResultsFolder folder = ResultsFolder.open(parent.resolve("run"), overwrite)) {
            Files.writeString(folder.file("a.csv"), text);
            folder.complete();
        }
    }

    private String content() throws IOException {
        return Files.readString(parent.resolve("run/a.csv"));
    }

    @Test
    void takesItsFinalNameOnlyWhenComplete() throws IOException {
        try (ResultsFolder folder = ResultsFolder.open(parent.resolve("run"), false)) {
            Files.writeString(folder.file("a.csv"), "x");
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
        try (ResultsFolder folder = ResultsFolder.open(parent.resolve("run"), true)) {
            Files.writeString(folder.file("a.csv"), "half");
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
        try (ResultsFolder folder = ResultsFolder.open(parent.resolve("run"), false)) {
            Files.writeString(folder.file("heads.nc.part"), "half");
            assertThrows(IllegalStateException.class, folder::complete);
        }
        assertFalse(Files.exists(parent.resolve("run")));
    }

    @Test
    void refusesASecondRunIntoTheSameFolder() throws IOException {
        try (ResultsFolder folder = ResultsFolder.open(parent.resolve("run"), false)) {
            Files.writeString(folder.file("a.csv"), "first");
            ResultsException e =
                    assertThrows(ResultsException.class, () -> ResultsFolder.open(parent.resolve("run"), false));
            assertEquals(ResultsException.Kind.IN_USE, e.kind());
            assertTrue(Files.exists(folder.file("a.csv")), "the first run keeps its files");
        }
    }

    @Test
    void namesAPlaceThatCannotHoldAFolder() throws IOException {
        Files.writeString(parent.resolve("file"), "x");
        ResultsException e =
                assertThrows(ResultsException.class, () -> ResultsFolder.open(parent.resolve("file/run"), false));
        assertEquals(ResultsException.Kind.NOT_WRITABLE, e.kind());
        assertTrue(e.getMessage().contains("file/run"), e.getMessage());
    }

    @Test
    void saysBeforeTheWorkThatTheDiskIsTooSmall() throws IOException {
        try (ResultsFolder folder = ResultsFolder.open(parent.resolve("run"), false)) {
            ResultsException e = assertThrows(ResultsException.class, () -> folder.requireSpace(Long.MAX_VALUE / 2));
            assertEquals(ResultsException.Kind.DISK_FULL, e.kind());
        }
    }
}
