package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a sweep answers when some or all of its runs fail. */
class SweepFailuresTest {

    @TempDir
    private Path folder;

    @BeforeEach
    void writeScenario() throws IOException {
        SweepExample.writeSmall(folder);
    }

    private Answer sweep(String key, String values) throws IOException {
        Files.writeString(folder.resolve("sweep.yaml"), """
                title: Some runs
                base: scenario.yaml
                vary:
                  - {name: varied, key: KEY, values: [VALUES]}
                design: full factorial
                keep:
                  - {figure: loss, at: Coolabah Spring, after: 1 yr}
                  - {figure: head over time, at: Coolabah Spring}
                """.replace("KEY", key).replace("VALUES", values));
        return headfall("sweep", folder.toString(), "--quiet");
    }

    @Test
    void someFailedIsSaidAlsoWhenQuiet() throws IOException {
        Answer swept =
                sweep("aquifer.transmissivity", "100 m2/d, 0 m2/d, -1 m2/d").exits(ExitCode.SOME_FAILED);
        String told = swept.errInOneLine();
        assertTrue(told.contains("2 of 3 runs failed."), told);
        assertTrue(told.contains("(runs 2, 3): not a valid scenario"), told);
        assertEquals("", swept.out());
        String page =
                Files.readString(folder.resolve("results").resolve("sweep").resolve("sweep.html"));
        String answer = page.substring(page.indexOf("id=\"answer\""), page.indexOf("id=\"tables\""));
        assertTrue(answer.contains("2 of 3 runs failed."), answer);
        String status = headfall("sweep", "status", folder.toString()).exits(0).out();
        assertTrue(status.contains("runs 2, 3 failed: "), status);
        assertFalse(status.contains("?"), status);
    }

    /** The bottom is at -150 m: no value is wrong by itself, and no run is valid. */
    @Test
    void allFailedIsTheDocumentsFault() throws IOException {
        Answer answer = sweep("aquifer.top", "-200 m, -300 m").exits(ExitCode.INPUT);
        assertTrue(answer.err().contains("2 of 2 runs failed."), answer.err());
        assertTrue(Files.exists(folder.resolve("results").resolve("sweep").resolve("sweep.html")));
    }

    @Test
    void statusAndShowSayThatTheStoreIsOfAnotherDocument() throws IOException {
        sweep("aquifer.transmissivity", "0 m2/d, -1 m2/d, 100 m2/d");
        String of = "was made of another sweep document";
        Answer answer = headfall("sweep", "status", folder.toString()).exits(0);
        assertFalse(answer.err().contains(of), answer.err());
        Path document = folder.resolve("sweep.yaml");
        Files.writeString(document, Files.readString(document).replace("Some runs", "Other runs"));
        answer = headfall("sweep", "status", folder.toString()).exits(0);
        assertTrue(answer.err().contains(of), answer.err());
        assertTrue(answer.out().contains("3 runs: 1 finished, 2 failed, 0 to be made"), answer.out());
        answer = headfall("sweep", "show", folder.toString(), "1").exits(0);
        assertTrue(answer.err().contains(of), answer.err());
    }
}
