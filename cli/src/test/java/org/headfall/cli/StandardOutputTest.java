package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An answer that gets lost is a failure; one of which the reader has had enough is none. */
class StandardOutputTest {

    @TempDir
    private Path folder;

    /** The shell keeps the exit code of Headfall, whose reader ends without having read a line. */
    @Test
    void aReaderThatLeavesIsNoFailure() throws IOException, InterruptedException {
        Path code = folder.resolve("code");
        // Headfall takes longer to start than the reader to leave.
        String said = shell("{ " + quoted(HeadfallProcess.command("--help")) + "; echo $? >" + code + "; } | true");
        assertEquals("0", Files.readString(code).strip(), said);
        assertFalse(said.contains("could not be written"), said);
    }

    @Test
    void aFullDiskIsOne() throws IOException, InterruptedException {
        Path full = Path.of("/dev/full");
        assumeTrue(Files.exists(full), "only Linux has a disk that is always full");
        Path code = folder.resolve("code");
        String said = shell(quoted(HeadfallProcess.command("--help")) + " >" + full + "; echo $? >" + code);
        assertEquals("1", Files.readString(code).strip(), said);
        assertTrue(said.contains("could not be written"), said);
    }

    private static String quoted(List<String> command) {
        return "'" + String.join("' '", command) + "'";
    }

    private String shell(String line) throws IOException, InterruptedException {
        Path messages = folder.resolve("messages");
        try (HeadfallProcess shell = HeadfallProcess.start(messages, List.of("sh", "-c", line))) {
            shell.end();
            return shell.said();
        }
    }
}
