package org.headfall.scenarios.report.content;

import java.time.LocalDate;
import java.util.List;

/**
 * Who lowers whose head at a date.
 *
 * @param date the date
 * @param causes names of the bores that take water, the columns
 * @param rows one row a site whose head falls
 * @param method how it was computed, and where the parts do not add up to the whole
 */
public record Interference(LocalDate date, List<String> causes, List<Row> rows, String method) {

    /** Checks that every row has a value for each cause. */
    public Interference {
        causes = List.copyOf(causes);
        rows = List.copyOf(rows);
        for (Row row : rows) {
            if (row.drawdowns().size() != causes.size()) {
                throw new IllegalArgumentException("interference at '" + row.site() + "': expected " + causes.size()
                        + " drawdowns, found " + row.drawdowns().size());
            }
        }
    }

    /**
     * Drawdown at one site.
     *
     * @param site name of the site
     * @param drawdowns drawdown due to each cause (m)
     * @param whole drawdown of the full run (m)
     */
    public record Row(String site, List<Double> drawdowns, double whole) {

        /** Copies the drawdowns. */
        public Row {
            drawdowns = List.copyOf(drawdowns);
        }
    }
}
