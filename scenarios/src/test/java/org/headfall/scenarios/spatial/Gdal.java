package org.headfall.scenarios.spatial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The command line programs of GDAL, as judges of our files; tests that need them are skipped where they are absent. */
public final class Gdal {
    private Gdal() {}

    /** Runs a program and gives what it printed; skips the test if the program is not installed. */
    public static String run(String... command) throws IOException, InterruptedException {
        assumeTrue(isInstalled(command[0]), command[0] + " (Debian package gdal-bin) is not installed");
        ProcessBuilder builder = new ProcessBuilder(List.of(command)).redirectErrorStream(true);
        Process process = builder.start();
        process.getOutputStream().close();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), () -> String.join(" ", command) + "\n" + printed);
        return printed;
    }

    private static boolean isInstalled(String program) {
        for (String folder : System.getenv().getOrDefault("PATH", "").split(File.pathSeparator, -1)) {
            if (new File(folder, program).canExecute()) {
                return true;
            }
        }
        return false;
    }
}
