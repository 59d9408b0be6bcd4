package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;

/** What those who maintain the program need to know about a fault of it. */
final class CrashReport {

    private CrashReport() {}

    /**
     * Writes a report to the folder for temporary files.
     *
     * @param thrown what was thrown
     * @param arguments the command line
     * @return the file
     * @throws IOException if it cannot be written
     */
    static Path write(Throwable thrown, List<String> arguments) throws IOException {
        Path file = Files.createTempFile("headfall-crash-", ".txt");
        try (PrintWriter report = new PrintWriter(Files.newBufferedWriter(file, StandardCharsets.UTF_8))) {
            report.println(ProgramVersion.text());
            report.println("time: " + Instant.now());
            report.println("command line: " + String.join(" ", arguments));
            for (String property : List.of("java.vm.name", "java.version", "os.name", "os.version", "os.arch")) {
                report.println(property + ": " + System.getProperty(property));
            }
            Runtime runtime = Runtime.getRuntime();
            report.println("processors: " + runtime.availableProcessors());
            report.println("memory allowed: " + runtime.maxMemory() + " bytes");
            thrown.printStackTrace(report);
        }
        return file;
    }
}
