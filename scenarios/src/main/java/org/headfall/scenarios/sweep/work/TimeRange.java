package org.headfall.scenarios.sweep.work;

/**
 * How long something takes, as far as it is known.
 *
 * @param least at least about so long (s)
 * @param most at most about so long (s)
 */
public record TimeRange(double least, double most) {

    /** Shorter times are called nothing (s). */
    private static final double NOTHING = 0.5;

    /** In words, such as "8 s to 3 min". */
    public String words() {
        String low = Durations.words(least);
        String high = Durations.words(most);
        if (least < NOTHING) {
            return "up to " + high;
        }
        return low.equals(high) ? "about " + low : low + " to " + high;
    }
}
