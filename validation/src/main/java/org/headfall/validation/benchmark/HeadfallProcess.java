package org.headfall.validation.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The program as a process of its own, from a cold start, as its launcher starts it. */
final class HeadfallProcess {
    private static final double NANO = 1e-9;

    /** Names the main class to the launcher, so it must not be handed on from the process of this benchmark. */
    private static final String MAIN = "HEADFALL_MAIN";

    private static final String JAVA_OPTIONS = "HEADFALL_JAVA_OPTIONS";

    /**
     * How a process ended.
     *
     * @param seconds time from its start to its end
     * @param output what it printed
     */
    record Ended(double seconds, String output) {}

    private final Path launcher;

    /**
     * Makes ready to start processes.
     *
     * @param launcher the script that starts Headfall
     */
    HeadfallProcess(Path launcher) {
        this.launcher = launcher;
    }

    /**
     * Runs a command of Headfall.
     *
     * @throws IllegalStateException if it ends with another exit code than 0
     */
    Ended command(String... words) throws IOException, InterruptedException {
        return run(Map.of(), words);
    }

    /**
     * Runs a command of this benchmark.
     *
     * @param javaOptions options of Java, such as the size of the heap
     * @throws IllegalStateException if it ends with another exit code than 0
     */
    Ended benchmark(String javaOptions, String... words) throws IOException, InterruptedException {
        return run(Map.of(MAIN, Benchmark.class.getName(), JAVA_OPTIONS, javaOptions), words);
    }

    private Ended run(Map<String, String> environment, String... words) throws IOException, InterruptedException {
        List<String> call = new ArrayList<>(List.of("sh", launcher.toString()));
        call.addAll(List.of(words));
        ProcessBuilder builder = new ProcessBuilder(call).redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment().remove(MAIN);
        builder.environment().putAll(environment);
        long start = System.nanoTime();
        Process process = builder.start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        int code = process.waitFor();
        double seconds = (System.nanoTime() - start) * NANO;
        if (code != 0) {
            throw new IllegalStateException(String.join(" ", words) + " ended with exit code " + code + ": " + output);
        }
        return new Ended(seconds, output);
    }
}
