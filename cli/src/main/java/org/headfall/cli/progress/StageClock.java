package org.headfall.cli.progress;

import java.util.Locale;
import java.util.function.LongSupplier;

/** Measures the stages of a piece of work and estimates the time left in the present one. */
final class StageClock {

    private static final double NANOSECONDS = 1e-9;
    private static final double LEAST_FRACTION_FOR_ESTIMATE = 0.01;

    private final LongSupplier nanoTime;
    private String stage = "";
    private long stageStart;
    private double fraction;

    /**
     * Makes a clock.
     *
     * @param nanoTime the time (ns) since any fixed moment
     */
    StageClock(LongSupplier nanoTime) {
        this.nanoTime = nanoTime;
    }

    /** Takes the news; answers whether a new stage has begun. */
    boolean update(String newStage, double newFraction) {
        boolean begins = !newStage.equals(stage);
        if (begins) {
            stage = newStage;
            stageStart = nanoTime.getAsLong();
        }
        fraction = Math.min(1, Math.max(0, newFraction));
        return begins;
    }

    /** The stage, the share done, the time taken and the time left, as one line of text. */
    String line() {
        double elapsed = (nanoTime.getAsLong() - stageStart) * NANOSECONDS;
        String done = String.format(Locale.ROOT, "%s: %3.0f %% after %s", stage, 100 * fraction, duration(elapsed));
        boolean guess = fraction >= LEAST_FRACTION_FOR_ESTIMATE && fraction < 1;
        return guess ? done + ", about " + duration(elapsed * (1 - fraction) / fraction) + " left" : done;
    }

    /** A time such as {@code 8 s}, {@code 2 min 05 s} or {@code 3 h 20 min}. */
    static String duration(double seconds) {
        long whole = Math.round(seconds);
        if (whole < 60) {
            return whole + " s";
        }
        if (whole < 3600) {
            return String.format(Locale.ROOT, "%d min %02d s", whole / 60, whole % 60);
        }
        return String.format(Locale.ROOT, "%d h %02d min", whole / 3600, whole % 3600 / 60);
    }
}
