package org.headfall.scenarios.limits;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.recording.RunCalendar;

/**
 * A day of the run itself from which an effect is measured, with its weight: taking changes what is measured from as well.
 *
 * @param day the day (d since the start), after the start
 * @param weight its weight; those of a comparison add up to one, less what the start weighs, which no taking changes
 */
public record ReferenceMoment(double day, double weight) {

    private static final int MONTHS_PER_YEAR = 12;

    /**
     * The days of a comparison, increasing. A mean of years is that of their months, by the trapezoidal rule.
     *
     * @param comparison the comparison
     * @return its days after the start; none if it is with the start, another run or nothing
     */
    public static List<ReferenceMoment> of(Comparison comparison) {
        List<ReferenceMoment> moments = new ArrayList<>();
        if (comparison instanceof Comparison.OnDay on) {
            moments.add(new ReferenceMoment(on.day(), 1));
        } else if (comparison instanceof Comparison.MeanOfYears mean) {
            double length = mean.toDay() - mean.fromDay();
            int months = (int) Math.max(1, Math.rint(length / RunCalendar.DAYS_PER_YEAR * MONTHS_PER_YEAR));
            for (int month = 0; month <= months; month++) {
                double weight = (month == 0 || month == months ? 0.5 : 1) / months;
                moments.add(new ReferenceMoment(mean.fromDay() + (double) month / months * length, weight));
            }
        }
        moments.removeIf(moment -> moment.day() <= 0);
        return List.copyOf(moments);
    }
}
