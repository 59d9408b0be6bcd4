package org.headfall.scenarios.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;

/** Failures that the file system makes itself. */
class FileFailureTest {

    @TempDir
    private Path folder;

    private static String reason(Executable refused) {
        String reason = FileFailure.reason(assertThrows(IOException.class, refused));
        assertFalse(reason.contains("Exception"), reason);
        return reason;
    }

    @Test
    void saysWhyWithoutNamesOfClasses() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "text");
        assertEquals("no such file or folder", reason(() -> Files.readString(folder.resolve("none"))));
        assertEquals("something of that name stands there already", reason(() -> Files.createDirectory(file)));
        assertEquals("a file, not a folder, stands there", reason(() -> Files.list(file)));
        assertEquals("the folder is not empty", reason(() -> Files.delete(folder)));
        assertTrue(reason(() -> Files.createFile(file.resolve("below"))).contains("ot a directory"));
    }

    @Test
    void keepsWhatIsToldInWords() {
        assertEquals("broken pipe", FileFailure.reason(new IOException("broken pipe")));
        assertEquals("the file system refuses", FileFailure.reason(new IOException()));
    }
}
