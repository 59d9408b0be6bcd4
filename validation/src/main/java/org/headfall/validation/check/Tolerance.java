package org.headfall.validation.check;

/**
 * How far ours may be from the published number, and why as far as that.
 *
 * @param allowed largest difference allowed, in the unit of the number, not negative
 * @param reason why this much, a few words
 */
public record Tolerance(double allowed, String reason) {

    /** Checks the size. */
    public Tolerance {
        if (!(allowed >= 0)) {
            throw new IllegalArgumentException("tolerance must not be negative, found " + allowed);
        }
    }

    /**
     * A share of the published number.
     *
     * @param share the share (-)
     * @param published the number
     * @param reason why this much
     * @return the tolerance
     */
    public static Tolerance share(double share, double published, String reason) {
        return new Tolerance(share * Math.abs(published), reason);
    }
}
