package org.headfall.cli.progress;

import java.io.PrintWriter;
import java.util.function.LongSupplier;

/** Plain lines at most every half minute, for logs and pipes: no cursor movement, no colour. */
public final class LogProgress implements Progress {

    private static final long INTERVAL = 30_000_000_000L;

    private final PrintWriter out;
    private final LongSupplier nanoTime;
    private final StageClock clock;
    private long nextTime;

    /**
     * Makes a progress log; its first line comes after half a minute.
     *
     * @param out the log
     * @param nanoTime the time (ns) since any fixed moment, such as {@code System::nanoTime}
     */
    public LogProgress(PrintWriter out, LongSupplier nanoTime) {
        this.out = out;
        this.nanoTime = nanoTime;
        this.clock = new StageClock(nanoTime);
        this.nextTime = nanoTime.getAsLong() + INTERVAL;
    }

    @Override
    public void reached(String stage, double fraction) {
        clock.update(stage, fraction);
        long now = nanoTime.getAsLong();
        if (now >= nextTime) {
            nextTime = now + INTERVAL;
            out.println(clock.line());
            out.flush();
        }
    }
}
