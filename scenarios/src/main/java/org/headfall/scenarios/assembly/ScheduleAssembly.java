package org.headfall.scenarios.assembly;

import java.util.List;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.scenario.TimeCourse;
import org.headfall.scenarios.scenario.TimeCourse.DatedValue;
import org.headfall.solver.schedule.LinearSchedule;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.schedule.StepSchedule;

/** Turns quantities on dates into quantities on days of the period. */
final class ScheduleAssembly {
    private final Period period;

    ScheduleAssembly(Period period) {
        this.period = period;
    }

    Schedule schedule(TimeCourse course) {
        if (course instanceof TimeCourse.Steady steady) {
            return Schedule.constant(steady.value());
        }
        if (course instanceof TimeCourse.Steps steps) {
            return new StepSchedule(days(steps.values()), values(steps.values()));
        }
        List<DatedValue> lines = ((TimeCourse.Lines) course).values();
        return new LinearSchedule(days(lines), values(lines));
    }

    private double[] days(List<DatedValue> values) {
        return values.stream().mapToDouble(value -> period.day(value.date())).toArray();
    }

    private static double[] values(List<DatedValue> values) {
        return values.stream().mapToDouble(DatedValue::value).toArray();
    }
}
