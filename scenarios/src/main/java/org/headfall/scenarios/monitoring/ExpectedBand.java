package org.headfall.scenarios.monitoring;

/**
 * Between which heads a reading is expected at a place on a day, if things go as computed.
 *
 * @param station name of the place
 * @param day the day (d since the start)
 * @param computed computed head (m above datum)
 * @param expected the same, less what computed heads there are too high in the mean (m above datum)
 * @param numericalError numerical error of the computed head (m)
 * @param spread how far readings are scattered around what is expected (m): two standard deviations; zero if unknown
 * @param basis what that rests on, in words
 */
public record ExpectedBand(
        String station,
        double day,
        double computed,
        double expected,
        double numericalError,
        double spread,
        String basis) {

    /** Lower end of the band (m above datum). */
    public double lowest() {
        return expected - numericalError - spread;
    }

    /** Upper end of the band (m above datum). */
    public double highest() {
        return expected + numericalError + spread;
    }
}
