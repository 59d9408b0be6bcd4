package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run of a sweep given back as a scenario: the one that was recorded, or none. */
class SweepRerunCommandTest {

    @TempDir
    private Path folder;

    private StringWriter err;

    @BeforeEach
    void makeSweep() throws IOException {
        SweepExample.writeSmall(folder);
        Files.writeString(folder.resolve("sweep.yaml"), """
                title: Two runs
                base: scenario.yaml
                vary:
                  - {name: T, key: aquifer.transmissivity, values: [100 m2/d, 200 m2/d]}
                design: full factorial
                keep:
                  - {figure: loss, at: Coolabah Spring, after: 1 yr}
                """);
    }

    private int headfall(String... arguments) {
        err = new StringWriter();
        return Headfall.execute(
                Terminal.NONE, new PrintWriter(new StringWriter()), new PrintWriter(err, true), arguments);
    }

    @Test
    void givesARecordedRunBackAndRefusesAnother() throws IOException {
        assertEquals(0, headfall("sweep", folder.toString(), "--quiet"), () -> err.toString());
        assertEquals(0, headfall("sweep", "rerun", folder.toString(), "2", "--quiet"), () -> err.toString());
        Path run = folder.resolve("results").resolve("sweep").resolve("run-2");
        assertTrue(Files.readString(run.resolve("scenario.yaml")).contains("transmissivity: 200 m2/d"));
        assertTrue(Files.exists(run.resolve("results").resolve("scenario").resolve("report.html")));
        Path base = folder.resolve("scenario.yaml");
        Files.writeString(base, Files.readString(base).replace("storativity: 2.0e-4", "storativity: 1.0e-4"));
        assertEquals(1, headfall("sweep", "rerun", folder.toString(), "2", "--quiet", "--overwrite"));
        assertTrue(err.toString().contains("run 2 as it was recorded cannot be made again"), () -> err.toString());
        assertTrue(err.toString().contains("changed since: the base scenario"), () -> err.toString());
    }
}
