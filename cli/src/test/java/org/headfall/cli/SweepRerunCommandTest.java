package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run of a sweep given back as a scenario: the one that was recorded, or none. */
class SweepRerunCommandTest {

    private static final String LOSS = "\"loss at Coolabah Spring after 1 yr (m)\"";

    @TempDir
    private Path folder;

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

    private Answer rerun(String... more) {
        List<String> arguments = new ArrayList<>(List.of("sweep", "rerun", folder.toString(), "2"));
        arguments.addAll(List.of(more));
        return headfall(arguments.toArray(String[]::new));
    }

    /** Changes the store by hand. */
    private void change(String sql) throws SQLException {
        Path store = folder.resolve("results").resolve("sweep").resolve("sweep.sqlite");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + store);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void comparesFiguresWithThoseInTheStore() throws SQLException {
        rerun("--quiet").exits(0);
        headfall("sweep", folder.toString(), "--quiet").exits(0);
        String kept = rerun().exits(1).errInOneLine();
        assertTrue(kept.contains("run-2") && kept.contains("--overwrite replaces it"), kept);
        assertFalse(kept.contains("--output"), kept);
        String same = rerun("--overwrite").exits(0).outInOneLine();
        assertTrue(same.contains("The same to the last digit: run 2, made again as the sweep made it ("), same);
        assertTrue(same.contains("), has the 3 figures of the store."), same);
        change("UPDATE runs SET " + LOSS + " = " + LOSS + " * 1.0000000001 WHERE number = 2");
        String rounded = rerun("--overwrite").exits(0).outInOneLine();
        assertTrue(rounded.contains("The same but for rounding: "), rounded);
        assertTrue(rounded.contains("of which 1 differ in their last digits"), rounded);
        change("UPDATE runs SET " + LOSS + " = " + LOSS + " + 0.001 WHERE number = 2");
        String other = rerun("--overwrite", "--quiet").exits(1).outInOneLine();
        assertTrue(
                other.matches(".*Not the same: run 2.* loss at Coolabah Spring after 1 yr \\(m\\): [-0-9.E]+ in the"
                        + " store, [-0-9.E]+ now ?"),
                other);
    }

    @Test
    void givesARecordedRunBackAndRefusesAnother() throws IOException {
        headfall("sweep", folder.toString(), "--quiet").exits(0);
        headfall("sweep", "rerun", folder.toString(), "2", "--quiet").exits(0);
        Path run = folder.resolve("results").resolve("sweep").resolve("run-2");
        assertTrue(Files.readString(run.resolve("scenario.yaml")).contains("transmissivity: 200 m2/d"));
        assertTrue(Files.exists(run.resolve("results").resolve("scenario").resolve("report.html")));
        Path base = folder.resolve("scenario.yaml");
        Files.writeString(base, Files.readString(base).replace("storativity: 2.0e-4", "storativity: 1.0e-4"));
        Answer answer = headfall("sweep", "rerun", folder.toString(), "2", "--quiet", "--overwrite")
                .exits(1);
        assertTrue(answer.err().contains("run 2 as it was recorded cannot be made again"), answer.err());
        assertTrue(answer.err().contains("changed since: the base scenario"), answer.err());
    }
}
