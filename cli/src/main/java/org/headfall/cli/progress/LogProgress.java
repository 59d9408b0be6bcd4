package org.headfall.cli.progress;

import java.io.PrintWriter;
import java.util.function.LongSupplier;

/**
 * Plain lines for logs and pipes, without cursor movement or colour: one when a stage begins, then at most one every half
 * minute.
 */
public final class LogProgress implements Progress {

    private static final long INTERVAL = 30_000_000_000L;

    private final PrintWriter out;
    private final LongSupplier nanoTime;
    private final StageClock clock;
    private long nextTime = Long.MIN_VALUE;

    /**
     * Makes a progress log.
     *
     * @param out the log
     * @param nanoTime the time (ns) since any fixed moment, such as {@code System::nanoTime}
     */
    public LogProgress(PrintWriter out, LongSupplier nanoTime) {
        this.out = out;
        this.nanoTime = nanoTime;
        this.clock = new StageClock(nanoTime);
    }

    @Override
    public void reached(String stage, double fraction) {
        boolean begins = clock.update(stage, fraction);
        long now = nanoTime.getAsLong();
        if (begins || now >= nextTime) {
            nextTime = now + INTERVAL;
            out.println(begins ? stage : clock.line());
            out.flush();
        }
    }
}
