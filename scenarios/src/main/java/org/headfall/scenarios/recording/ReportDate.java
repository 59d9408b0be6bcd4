package org.headfall.scenarios.recording;

/**
 * A date for which the tables and maps of a run are made.
 *
 * @param label words for it, such as "after 10 years"
 * @param day days since the start
 */
public record ReportDate(String label, double day) {

    /**
     * The same calendar date a number of years after the start.
     *
     * @param calendar calendar of the run
     * @param years years after the start, at least one
     * @return the report date
     */
    public static ReportDate afterYears(RunCalendar calendar, int years) {
        return new ReportDate("after " + years + (years == 1 ? " year" : " years"), calendar.yearsAfter(0, years));
    }
}
