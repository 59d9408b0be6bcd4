package org.headfall.cli.progress;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class ProgressTest {

    private static final long SECOND = 1_000_000_000L;

    private final AtomicLong time = new AtomicLong(-5 * SECOND);
    private final StringWriter shown = new StringWriter();
    private final PrintWriter out = new PrintWriter(shown);

    @Test
    void logsEachStageAndThenAPlainLineEveryHalfMinute() {
        try (Progress progress = new LogProgress(out, time::get)) {
            for (int second = 0; second <= 100; second++) {
                progress.reached("running", second / 200.0);
                time.addAndGet(SECOND);
            }
        }
        assertEquals("""
                running
                running:  15 % after 30 s, about 2 min 50 s left
                running:  30 % after 1 min 00 s, about 2 min 20 s left
                running:  45 % after 1 min 30 s, about 1 min 50 s left
                """, shown.toString());
    }

    @Test
    void logsOneLineAboutAShortStage() {
        try (Progress progress = new LogProgress(out, time::get)) {
            progress.reached("running", 0);
            progress.reached("running", 1);
            progress.reached("writing", 0);
        }
        assertEquals("running\nwriting\n", shown.toString().replace("\r", ""));
    }

    @Test
    void rewritesOneLineOnATerminalAndRemovesItAtTheEnd() {
        try (Progress progress = new TerminalProgress(out, time::get)) {
            progress.reached("a long stage", 0);
            time.addAndGet(10 * SECOND);
            progress.reached("a long stage", 0.5);
            progress.reached("short", 0);
        }
        String[] lines = shown.toString().split("\r", -1);
        assertEquals("a long stage:   0 % after 0 s", lines[1]);
        assertEquals("a long stage:  50 % after 10 s, about 10 s left", lines[2]);
        assertEquals("short:   0 % after 0 s", lines[3].stripTrailing());
        assertEquals(lines[2].length(), lines[3].length());
        assertTrue(lines[4].isBlank() && lines[5].isEmpty());
    }

    @Test
    void measuresEachStageFromItsOwnStart() {
        StageClock clock = new StageClock(time::get);
        clock.update("first", 0);
        time.addAndGet(100 * SECOND);
        clock.update("second", 0);
        time.addAndGet(SECOND);
        clock.update("second", 0.25);
        assertEquals("second:  25 % after 1 s, about 3 s left", clock.line());
    }

    @Test
    void writesHoursAndMinutes() {
        assertEquals("3 h 20 min", StageClock.duration(12_000));
    }
}
