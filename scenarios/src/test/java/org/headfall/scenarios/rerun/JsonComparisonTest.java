package org.headfall.scenarios.rerun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JsonComparisonTest {

    private static final String WHOLE =
            "{\"made\": \"by 1\", \"figures\": {\"seconds\": 3, \"steps\": 40}, \"drift\": null,"
                    + " \"features\": [{\"head\": 7, \"name\": \"A\"}, {\"head\": 8, \"name\": \"\"}]}";

    @TempDir
    private Path folder;

    private FileComparison beside(String before, String now) throws IOException {
        return new JsonComparison(text -> text.replace("by 1", "by 2"), Set.of("figures.seconds"))
                .of(
                        Files.writeString(folder.resolve("before.json"), before),
                        Files.writeString(folder.resolve("now.json"), now));
    }

    @Test
    void theVersionAndWhatIsLeftOutMakeNoDifference() throws IOException {
        FileComparison found = beside(WHOLE, WHOLE.replace("by 1", "by 2").replace("\"seconds\": 3", "\"seconds\": 4"));
        assertTrue(found.same(), found::toString);
        assertEquals(7, found.values());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "`, {\"head\": 8, \"name\": \"\"}` | `` | features 2: missing in the results, an object of 2 values now",
                "`[{\"head\": 7, \"name\": \"A\"}, {\"head\": 8, \"name\": \"\"}]` | []"
                        + " | features 1: missing in the results, an object of 2 values now",
                "`[{\"head\": 7, \"name\": \"A\"}, {\"head\": 8, \"name\": \"\"}]` | null"
                        + " | features: no value in the results, a list of 2 values now",
                "`{\"seconds\": 3, \"steps\": 40}` | {} | figures.steps: missing in the results, 40 now",
                "`\"figures\": {\"seconds\": 3, \"steps\": 40}, ` | ``"
                        + " | figures: missing in the results, an object of 2 values now",
                "`{\"seconds\": 3, \"steps\": 40}` | `\"\"`"
                        + " | figures: the text '' in the results, an object of 2 values now",
                "`, \"name\": \"\"` | `` | features 2.name: missing in the results, the text '' now",
                "`\"drift\": null,` | `` | drift: missing in the results, no value now",
                "`\"head\": 7` | `\"head\": \"7\"` | features 1.head: the text '7' in the results, 7 now",
            })
    void whatWasTakenAwayIsADifference(String part, String instead, String difference) throws IOException {
        assertTrue(WHOLE.contains(part), part);
        FileComparison found =
                beside(WHOLE.replace(part, instead).replace("by 1", "by 2"), WHOLE.replace("by 1", "by 2"));
        assertEquals(difference, found.first().orElse("none"));
    }

    @Test
    void onlyTheFileOfTheResultsCanBeUnreadable() {
        IOException e = assertThrows(UnreadableException.class, () -> beside(WHOLE.substring(0, 90), WHOLE));
        assertTrue(
                String.valueOf(e.getMessage()).startsWith("cannot be read any more: line 1, column "), e::getMessage);
        assertFalse(String.valueOf(e.getMessage()).contains("Source"), e::getMessage);
        assertTrue(e.getCause() != null);
        RuntimeException ofTheNew = assertThrows(RuntimeException.class, () -> beside(WHOLE, WHOLE.substring(0, 90)));
        assertEquals("tools.jackson.core", ofTheNew.getClass().getPackageName().substring(0, 18));
    }
}
