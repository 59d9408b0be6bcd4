package org.headfall.scenarios.limits;

/**
 * A run that goes on after its end, from which on some bores take nothing any more.
 *
 * @param run the longer run
 * @param headError numerical error of head by time stepping at each station (m)
 * @param stopDay day on which their taking stops (d since the start)
 */
@SuppressWarnings("ArrayRecordComponent") // made once a run, never compared
public record AfterTaking(RunSeries run, double[] headError, double stopDay) {

    /** Last day of the longer run. */
    public double endDay() {
        double[] days = run.series().get(0).days();
        return days[days.length - 1];
    }
}
