package org.headfall.scenarios.badinput;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What a user is told about bad input. Each folder of src/test/resources/bad-input is a case; to add one, add a folder
 * and write into {@code expected.txt} what a user needs to know to mend it.
 */
class BadInputTest {
    @TempDir
    private Path folder;

    static List<BadInputCase> cases() throws IOException {
        return BadInputCase.all();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void namesEveryProblem(BadInputCase one) throws IOException {
        one.copyTo(folder);
        assertEquals(one.expected(), Messages.of(folder.resolve("scenario.yaml")));
    }

    @Test
    void findsNothingWrongWithTheBase() throws IOException {
        BadInputCase.copyBase(folder);
        assertEquals("", Messages.of(folder.resolve("scenario.yaml")));
    }

    @Test
    void holdsAtLeastSixtyCases() throws IOException {
        assertTrue(cases().size() >= 60, () -> "only some cases were found");
    }
}
