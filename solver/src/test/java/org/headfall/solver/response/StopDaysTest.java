package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import java.util.OptionalDouble;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.schedule.LinearSchedule;
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.solver.simulation.Settings;
import org.junit.jupiter.api.Test;

/**
 * A rate that jumps on day 700 and one that bends on days 250 and 900, a boundary that bends on days 1000 and 3000, recharge that
 * jumps on days 365 and 2000.
 */
class StopDaysTest {

    private static StopDays days(double from, double to, double... record) {
        FlowProblem problem = StationResponsesTest.field(
                new Operation.PumpedRate(
                        new StepSchedule(new double[] {0, 700}, new double[] {900, 300}), OptionalDouble.empty()),
                new Operation.PumpedRate(
                        new LinearSchedule(new double[] {250, 900}, new double[] {0, 500}), OptionalDouble.empty()));
        StationResponses responses = StationResponses.fromSteady(problem, List.of(), 5000, Settings.DEFAULT);
        return StopDays.of(problem, responses.undisturbed(), record, from, to);
    }

    @Test
    void stepsEndWhereAnythingJumpsOrBendsOrIsRecorded() {
        StopDays days = days(0, 4000, 0, 30, 365, 4000);
        assertArrayEquals(new double[] {30, 250, 365, 700, 900, 1000, 2000, 3000, 4000}, days.all());
        for (double day : days.all()) {
            boolean jumps = day == 365 || day == 700 || day == 2000;
            boolean bends = day == 250 || day == 900 || day == 1000 || day == 3000;
            assertEquals(jumps, days.jumpsOn(day), "day " + day);
            assertEquals(bends, days.bendsOn(day), "day " + day);
        }
    }

    /** A run that goes on has passed what lies before; a jump on its last day changes nothing before it. */
    @Test
    void onlyTheStretchCounts() {
        StopDays days = days(365, 700, 365, 500, 701);
        assertArrayEquals(new double[] {500, 700}, days.all());
        assertFalse(days.jumpsOn(700));
    }
}
