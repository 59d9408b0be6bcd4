package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Commands that may not write where they are told to say so before they read or compute anything: what they would read here
 * is missing or cannot be read, and of that they say nothing.
 */
class TakenFolderTest {

    @TempDir
    private Path folder;

    private Path taken;

    @BeforeEach
    void spoil() throws IOException {
        Files.writeString(folder.resolve("scenario.yaml"), "storativity: [");
        taken = Files.createDirectory(folder.resolve("taken"));
    }

    /** Each command with a file that it writes. */
    static Stream<List<String>> commands() {
        return Stream.of(
                List.of("limits.csv", "run"),
                List.of("limits.csv", "estimate"),
                List.of("capping-order.csv", "capping"),
                List.of("warnings.csv", "monitor"),
                List.of("sites.html", "site"),
                List.of("spacing.csv", "spacing"),
                List.of("rates.csv", "allocate"),
                List.of("compared-runs.csv", "compare"));
    }

    private Answer answer(String command, String... options) {
        List<String> line = new ArrayList<>(List.of(command, folder.toString()));
        if (command.equals("compare")) {
            line.add(folder.toString());
        }
        line.addAll(List.of("--output", taken.toString()));
        line.addAll(Arrays.asList(options));
        return headfall(line.toArray(String[]::new)).exits(1);
    }

    private static boolean tellsOfWhatWasRead(Answer answer) {
        return answer.err().contains("scenario.yaml") || answer.err().contains("holds no finished results");
    }

    @ParameterizedTest
    @MethodSource("commands")
    void resultsThatStandThereAreKeptBeforeAnythingIsRead(List<String> command) throws IOException {
        Path old = Files.writeString(taken.resolve(command.get(0)), "old");
        Answer refused = answer(command.get(1));
        assertTrue(refused.err().contains("results exist; they are kept"), refused.err());
        assertFalse(tellsOfWhatWasRead(refused), refused.err());
        assertEquals("old", Files.readString(old));
        assertFalse(Files.exists(folder.resolve("taken.part")));
        // the same faults are told once the place may be used
        assertTrue(tellsOfWhatWasRead(answer(command.get(1), "--overwrite")));
        assertEquals("old", Files.readString(old));
    }

    @ParameterizedTest
    @MethodSource("commands")
    void whatTheCommandDidNotWriteIsKeptBeforeAnythingIsRead(List<String> command) throws IOException {
        Path letter = Files.write(taken.resolve("letter.txt"), new byte[] {1, 2});
        Answer refused = answer(command.get(1), "--overwrite");
        assertTrue(refused.err().contains("was not written by this command (letter.txt)"), refused.err());
        assertFalse(tellsOfWhatWasRead(refused), refused.err());
        assertArrayEquals(new byte[] {1, 2}, Files.readAllBytes(letter));
    }

    /** Which of both a document asks for is known only when it has been read, so both may stand there. */
    @Test
    void resultsOfCasesMayBeReplacedByARun() throws IOException {
        Files.createDirectory(taken.resolve("with-the-proposal"));
        Files.writeString(taken.resolve("with-the-proposal").resolve("limits.csv"), "old");
        Files.writeString(taken.resolve("limits-by-case.csv"), "old");
        assertTrue(answer("run").err().contains("results exist; they are kept"));
        assertTrue(tellsOfWhatWasRead(answer("run", "--overwrite")));
    }
}
