package org.headfall.scenarios.recording;

import java.util.TreeSet;
import java.util.stream.DoubleStream;

/**
 * Which days are recorded.
 *
 * @param days every recorded day, increasing, the start and the end among them
 * @param gridDays days at which the grid goes to the file; a subset of days
 * @param keptDays days at which the grid stays in memory; a subset of gridDays
 */
@SuppressWarnings("ArrayRecordComponent") // built once for a run, never compared
public record RecordPlan(double[] days, double[] gridDays, double[] keptDays) {

    /** Years over which the decline before a report date is taken: long enough to leave the seasons out. */
    public static final int YEARS_OF_DECLINE = 5;

    /**
     * Plan that serves the tables of a run: besides the days asked for, the start, the end, the report dates, and
     * five years before each report date, so that rates of decline need no interpolation.
     *
     * @param description the run
     * @param stationDays days wanted in the series of stations
     * @param gridDays days wanted in the file of grids
     * @return the plan; days outside the run are left out
     */
    public static RecordPlan of(RunDescription description, double[] stationDays, double[] gridDays) {
        double end = description.endDay();
        RunCalendar calendar = description.calendar();
        double[] reports =
                description.reportDates().stream().mapToDouble(ReportDate::day).toArray();
        double[] earlier = DoubleStream.of(reports)
                .map(day -> calendar.yearsAfter(day, -YEARS_OF_DECLINE))
                .toArray();
        double[] kept = merged(end, new double[] {0, end}, reports);
        double[] grids = merged(end, kept, gridDays);
        return new RecordPlan(merged(end, grids, stationDays, earlier), grids, kept);
    }

    private static double[] merged(double end, double[]... lists) {
        TreeSet<Double> days = new TreeSet<>();
        for (double[] list : lists) {
            for (double day : list) {
                if (day >= 0 && day <= end) {
                    days.add(day);
                }
            }
        }
        return days.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
