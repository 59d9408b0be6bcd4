package org.headfall.scenarios.sweep.statistics;

/**
 * A probability found by counting.
 *
 * @param count runs that count
 * @param of all runs
 */
public record Share(int count, int of) {

    /** Two-sided 95 per cent of the standard normal distribution, in standard deviations. */
    public static final double DEVIATIONS = 1.959963984540054;

    /** Checks the counts. */
    public Share {
        if (count < 0 || count > of) {
            throw new IllegalArgumentException("a share is of at least as many, found " + count + " of " + of);
        }
    }

    /** The share, NaN of nothing. */
    public double value() {
        return of == 0 ? Double.NaN : (double) count / of;
    }

    /** Whether all of them count. */
    public boolean isAll() {
        return count == of;
    }

    /** Lower end of the 95 per cent interval of the probability (Wilson 1927, J. Am. Stat. Assoc. 22, 209-212). */
    public double low() {
        return Math.max(0, centre() - halfWidth());
    }

    /** Upper end of the 95 per cent interval. */
    public double high() {
        return Math.min(1, centre() + halfWidth());
    }

    private double centre() {
        double spread = DEVIATIONS * DEVIATIONS / of;
        return (value() + spread / 2) / (1 + spread);
    }

    private double halfWidth() {
        double spread = DEVIATIONS * DEVIATIONS / of;
        return DEVIATIONS / (1 + spread) * Math.sqrt(value() * (1 - value()) / of + spread / (4 * of));
    }

    /**
     * The {@link LikelihoodWord} for it. Taken at the centre of the
     * interval, not at the share itself, so that few runs that agree do not make anything virtually certain.
     */
    public String words() {
        double p = centre();
        return Double.isNaN(p) ? "unknown" : LikelihoodWord.of(p).words();
    }
}
