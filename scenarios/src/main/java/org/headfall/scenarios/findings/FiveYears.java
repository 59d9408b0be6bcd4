package org.headfall.scenarios.findings;

import java.util.OptionalDouble;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;

/** How a series of a run falls over five years. */
final class FiveYears {

    private final RunCalendar calendar;

    FiveYears(RunDescription description) {
        calendar = description.calendar();
    }

    /**
     * Mean fall over the last five calendar years, between the same days of the year; a shorter time would look like a
     * faster decline.
     *
     * @param days recorded days, increasing (d since the start)
     * @param values value at each day
     * @param day the day up to which
     * @return fall a year; absent if the record does not reach back so far, or has no value there
     */
    OptionalDouble meanFall(double[] days, double[] values, double day) {
        double earlier = calendar.yearsAfter(day, -RecordPlan.YEARS_OF_DECLINE);
        if (earlier < days[0]) {
            return OptionalDouble.empty();
        }
        double fall = StationSeries.interpolate(days, values, earlier) - StationSeries.interpolate(days, values, day);
        double years = (day - earlier) / RunCalendar.DAYS_PER_YEAR;
        return Double.isFinite(fall) ? OptionalDouble.of(fall / years) : OptionalDouble.empty();
    }
}
