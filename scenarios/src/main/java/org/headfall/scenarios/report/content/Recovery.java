package org.headfall.scenarios.report.content;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What becomes of drawdown at a site when taking stops.
 *
 * @param site name of the site
 * @param taking whose taking stops
 * @param stop the day on which it stops
 * @param atStop drawdown then by that taking (m)
 * @param largest largest drawdown from then on (m)
 * @param largestOn its date, null if the drawdown is less than the numerical error
 * @param grows whether drawdown was still growing on the last date looked at
 * @param recoveredOn when nine tenths of it have gone, null if that was not found
 * @param yearsToRecovery years from the stop until then, or NaN
 * @param last last date looked at
 */
public record Recovery(
        String site,
        String taking,
        LocalDate stop,
        double atStop,
        double largest,
        @Nullable LocalDate largestOn,
        boolean grows,
        @Nullable LocalDate recoveredOn,
        double yearsToRecovery,
        LocalDate last) {}
