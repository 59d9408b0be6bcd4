package org.headfall.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The scenario of the sweep example, made small: coarse cells and a single year. */
final class SweepExample {

    private SweepExample() {}

    /** Writes it into a folder as scenario.yaml. */
    static void writeSmall(Path folder) throws IOException {
        String scenario = Files.readString(Path.of("..", "scenarios", "examples", "sweep", "scenario.yaml"));
        Files.writeString(
                folder.resolve("scenario.yaml"),
                scenario.replace("cell: 2 km", "cell: 4 km")
                        .replace("for: 20 yr", "for: 1 yr")
                        .replace("within 10 yr", "ever")
                        .replace("report_after: [1 yr, 10 yr, 20 yr]", "report_after: [1 yr]"));
    }
}
