package org.headfall.cli.progress;

import java.io.PrintWriter;
import java.util.function.LongSupplier;

/** One line that is rewritten in place, a few times a second. For terminals only: it moves the cursor. */
public final class TerminalProgress implements Progress {

    private static final long INTERVAL = 200_000_000L;
    private static final int WIDEST = 79;

    private final PrintWriter out;
    private final LongSupplier nanoTime;
    private final StageClock clock;
    private long nextTime = Long.MIN_VALUE;
    private int shown;

    /**
     * Makes a progress line.
     *
     * @param out the terminal
     * @param nanoTime the time (ns) since any fixed moment, such as {@code System::nanoTime}
     */
    public TerminalProgress(PrintWriter out, LongSupplier nanoTime) {
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
            show(clock.line());
        }
    }

    private void show(String line) {
        String cut = line.length() > WIDEST ? line.substring(0, WIDEST) : line;
        out.print('\r' + cut + " ".repeat(Math.max(0, shown - cut.length())));
        out.flush();
        shown = cut.length();
    }

    @Override
    public void close() {
        if (shown > 0) {
            out.print('\r' + " ".repeat(shown) + '\r');
            out.flush();
            shown = 0;
        }
    }
}
