package org.headfall.validation.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.headfall.cli.Headfall;
import org.headfall.cli.Terminal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** {@code headfall validate}, found by the program on its class path. */
class ValidateCommandTest {

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int headfall(String... arguments) {
        return Headfall.execute(Terminal.NONE, new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    }

    @Test
    void runsTheCasesWhoseNamesAreGiven(@TempDir Path folder) {
        Path output = folder.resolve("new/checks");
        int code = headfall("validate", "--only", "example-jenkins,water", "--json", "--output", output.toString());
        assertEquals(0, code, err::toString);
        JsonNode answer = JsonMapper.builder().build().readTree(out.toString());
        assertEquals(2, answer.get("passed").size(), out::toString);
        assertEquals(0, answer.get("failing").size(), out::toString);
        assertTrue(Files.exists(output.resolve("validation.html")) && Files.exists(output.resolve("validation.csv")));
    }

    @Test
    void aNameThatIsNoCaseIsAMistakeOfTheCommandLine(@TempDir Path folder) {
        assertEquals(2, headfall("validate", "--only", "nonsense", "--output", folder.toString()));
        assertTrue(err.toString().contains("nonsense") && err.toString().contains("well-function"), err::toString);
    }

    @Test
    void aFolderThatCannotBeMadeIsTheUsersToMend(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("file"), "in the way");
        assertEquals(1, headfall("validate", "--only", "example-jenkins", "--output", file.toString()));
        assertTrue(err.toString().contains("file"), err::toString);
    }
}
