package org.headfall.scenarios.findings;

import java.util.OptionalDouble;

/**
 * What is left at a station of the drawdown by some bores after they have stopped for good, while everything else goes on as
 * on the last day of the run. Far away drawdown goes on growing for years after that.
 *
 * @param station name of the station
 * @param kind what it is, in words
 * @param taking whose taking it is, in words
 * @param stopDay day on which they stop (d since the start)
 * @param atStop drawdown then (m): head without them less head with them
 * @param largest largest drawdown from then on (m)
 * @param largestDay its day
 * @param hasPassed whether it lies before the last day looked at; otherwise drawdown was still growing then
 * @param recoveredDay first day from which on no more than a tenth of it is left; absent if that comes later than the last
 *     day, or a tenth is less than the error
 * @param lastDay last day looked at
 * @param error numerical error of these drawdowns (m)
 */
public record Recovery(
        String station,
        String kind,
        String taking,
        double stopDay,
        double atStop,
        double largest,
        double largestDay,
        boolean hasPassed,
        OptionalDouble recoveredDay,
        double lastDay,
        double error) {

    /** Whether the drawdown is large enough to say when it was largest. */
    public boolean isCertain() {
        return largest > error;
    }
}
