package org.headfall.validation.check;

/**
 * A published number beside ours.
 *
 * @param quantity what is compared, and where and when
 * @param unit its unit, "-" where it has none
 * @param printed the published number as printed, or as computed from the published formula
 * @param published its value
 * @param ours our value
 * @param tolerance how far they may be apart
 */
public record Comparison(
        String quantity, String unit, String printed, double published, double ours, Tolerance tolerance) {

    private static final int DIGITS = 6;

    /**
     * Comparison with a number as it is printed.
     *
     * @param quantity what is compared
     * @param unit its unit
     * @param printed the number as printed, such as "4.0356"
     * @param ours our value
     * @param tolerance how far they may be apart
     * @return the comparison
     */
    public static Comparison withPrinted(
            String quantity, String unit, String printed, double ours, Tolerance tolerance) {
        return new Comparison(quantity, unit, printed, Double.parseDouble(printed), ours, tolerance);
    }

    /**
     * Comparison with a number computed from a published formula.
     *
     * @param quantity what is compared
     * @param unit its unit
     * @param published value of the formula
     * @param ours our value
     * @param tolerance how far they may be apart
     * @return the comparison
     */
    public static Comparison withFormula(
            String quantity, String unit, double published, double ours, Tolerance tolerance) {
        return new Comparison(quantity, unit, Figures.significant(published, DIGITS), published, ours, tolerance);
    }

    /** Ours less the published number. */
    public double difference() {
        return ours - published;
    }

    /** Whether the difference is within the tolerance; a value that is not a number never is. */
    public boolean holds() {
        return Math.abs(difference()) <= tolerance.allowed();
    }

    /** Difference over what is allowed: 1 just holds. Infinite where ours is not a number. */
    public double strain() {
        double size = Math.abs(difference());
        if (Double.isNaN(size)) {
            return Double.POSITIVE_INFINITY;
        }
        return size == 0 ? 0 : size / tolerance.allowed();
    }

    @Override
    public String toString() {
        return quantity + ": published " + printed + ", ours " + Figures.significant(ours, 9) + " " + unit
                + ", difference " + Figures.significant(difference(), 3) + ", allowed "
                + Figures.significant(tolerance.allowed(), 3) + " (" + tolerance.reason() + ")";
    }
}
