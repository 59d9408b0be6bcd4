package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a sweep answers when some or all of its runs fail. */
class SweepFailuresTest {

    @TempDir
    private Path folder;

    private StringWriter out;
    private StringWriter err;

    @BeforeEach
    void writeScenario() throws IOException {
        SweepExample.writeSmall(folder);
    }

    private int sweep(String key, String values) throws IOException {
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

    private int headfall(String... arguments) {
        out = new StringWriter();
        err = new StringWriter();
        return Headfall.execute(Terminal.NONE, new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    }

    @Test
    void someFailedIsSaidAlsoWhenQuiet() throws IOException {
        assertEquals(
                ExitCode.SOME_FAILED.code(),
                sweep("aquifer.transmissivity", "100 m2/d, 0 m2/d, -1 m2/d"),
                () -> err.toString());
        String told = err.toString().replaceAll("\\s+", " ");
        assertTrue(told.contains("2 of 3 runs failed."), told);
        assertTrue(told.contains("(runs 2, 3): not a valid scenario"), told);
        assertEquals("", out.toString());
        String page =
                Files.readString(folder.resolve("results").resolve("sweep").resolve("sweep.html"));
        String answer = page.substring(page.indexOf("id=\"answer\""), page.indexOf("id=\"tables\""));
        assertTrue(answer.contains("2 of 3 runs failed."), answer);
        assertEquals(0, headfall("sweep", "status", folder.toString()));
        assertTrue(out.toString().contains("runs 2, 3 failed: "), () -> out.toString());
        assertFalse(out.toString().contains("?"), () -> out.toString());
    }

    /** The bottom is at -150 m: no value is wrong by itself, and no run is valid. */
    @Test
    void allFailedIsTheDocumentsFault() throws IOException {
        assertEquals(ExitCode.INPUT.code(), sweep("aquifer.top", "-200 m, -300 m"), () -> err.toString());
        assertTrue(err.toString().contains("2 of 2 runs failed."), () -> err.toString());
        assertTrue(Files.exists(folder.resolve("results").resolve("sweep").resolve("sweep.html")));
    }

    @Test
    void statusAndShowSayThatTheStoreIsOfAnotherDocument() throws IOException {
        sweep("aquifer.transmissivity", "0 m2/d, -1 m2/d, 100 m2/d");
        String of = "was made of another sweep document";
        assertEquals(0, headfall("sweep", "status", folder.toString()));
        assertFalse(err.toString().contains(of), err::toString);
        Path document = folder.resolve("sweep.yaml");
        Files.writeString(document, Files.readString(document).replace("Some runs", "Other runs"));
        assertEquals(0, headfall("sweep", "status", folder.toString()));
        assertTrue(err.toString().contains(of), err::toString);
        assertTrue(out.toString().contains("3 runs: 1 finished, 2 failed, 0 to be made"), out::toString);
        assertEquals(0, headfall("sweep", "show", folder.toString(), "1"));
        assertTrue(err.toString().contains(of), err::toString);
    }
}
