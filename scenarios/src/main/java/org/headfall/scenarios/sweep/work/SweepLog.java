package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** Plain lines with their time: what is said at the beginning and the end, and how far the sweep is, once a minute. */
final class SweepLog implements AutoCloseable {

    private static final double NANOSECONDS = 1e-9;
    private static final double INTERVAL = 60;
    private static final double MINUTE = 60;

    private final Writer writer;
    private final long started = System.nanoTime();
    private double next = INTERVAL;

    SweepLog(Path file) throws IOException {
        writer = Files.newBufferedWriter(
                file, StandardCharsets.UTF_8, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }

    void say(String line) throws IOException {
        writer.write(Instant.now().truncatedTo(ChronoUnit.SECONDS) + " " + line + System.lineSeparator());
        writer.flush();
    }

    /** Says how far the sweep is, if a minute has passed. */
    void reached(int doneBefore, int done, int failed, int all) throws IOException {
        double seconds = (System.nanoTime() - started) * NANOSECONDS;
        if (seconds < next) {
            return;
        }
        next = seconds + INTERVAL;
        double rate = (done - doneBefore) / seconds;
        String left = rate > 0 ? String.format(Locale.ROOT, "%.0f min left", (all - done) / rate / MINUTE) : "";
        say(String.format(
                Locale.ROOT, "%d of %d runs done, %d failed, %.2f a second, %s", done, all, failed, rate, left));
    }

    @Override
    public void close() throws IOException {
        writer.close();
    }
}
