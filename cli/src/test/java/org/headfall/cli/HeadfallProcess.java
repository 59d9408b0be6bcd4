package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/** Headfall as a process of its own, to be stopped in the middle of its work. Close it to be sure that it has ended. */
final class HeadfallProcess implements AutoCloseable {
    private static final long LONGEST_WAIT_SECONDS = 120;

    private final Process process;
    private final Path messages;

    private HeadfallProcess(Process process, Path messages) {
        this.process = process;
        this.messages = messages;
    }

    /** The command that starts Headfall with some arguments. */
    static List<String> command(String... arguments) {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-cp",
                System.getProperty("java.class.path"),
                Headfall.class.getName()));
        command.addAll(List.of(arguments));
        return command;
    }

    /**
     * Starts a command.
     *
     * @param messages file for what it says
     * @param command the command
     */
    static HeadfallProcess start(Path messages, List<String> command) throws IOException {
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(messages.toFile())
                .start();
        return new HeadfallProcess(process, messages);
    }

    /** Waits until something has happened, or the process has ended. */
    void waitUntil(BooleanSupplier happened) throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(LONGEST_WAIT_SECONDS);
        while (!happened.getAsBoolean() && process.isAlive()) {
            assertTrue(System.nanoTime() < end, "nothing happened for too long");
            Thread.sleep(2);
        }
    }

    boolean isRunning() {
        return process.isAlive();
    }

    /** Sends a signal, such as KILL. */
    void send(String signal) throws IOException, InterruptedException {
        new ProcessBuilder("kill", "-" + signal, Long.toString(process.pid()))
                .start()
                .waitFor();
    }

    /** Waits for the end; answers the exit code. */
    int end() throws InterruptedException {
        assertTrue(process.waitFor(LONGEST_WAIT_SECONDS, TimeUnit.SECONDS), "still running");
        return process.exitValue();
    }

    /** What it has said so far. */
    String said() {
        try {
            return Files.readString(messages, StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            return "";
        }
    }

    @Override
    public void close() {
        process.destroyForcibly().onExit().join();
    }
}
