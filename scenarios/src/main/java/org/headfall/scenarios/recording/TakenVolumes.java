package org.headfall.scenarios.recording;

import java.util.Arrays;
import org.headfall.solver.flow.RateHistory;

/** Volume that each bore of a run has taken up to any day. Injection is not subtracted: what is taken counts. Immutable. */
public final class TakenVolumes {

    private final double[] days;
    private final double[][] taken;

    private TakenVolumes(double[] days, double[][] taken) {
        this.days = days;
        this.taken = taken;
    }

    /**
     * Volumes of a run.
     *
     * @param history its discharges
     * @param bores number of its bores
     * @return the volumes
     */
    public static TakenVolumes of(RateHistory history, int bores) {
        int steps = history.steps();
        double[] days = new double[steps + 1];
        Arrays.setAll(days, history::startOf);
        double[][] taken = new double[bores][steps + 1];
        for (int bore = 0; bore < bores; bore++) {
            for (int step = 0; step < steps; step++) {
                double volume = Math.max(0, history.rate(step, bore)) * (days[step + 1] - days[step]);
                taken[bore][step + 1] = taken[bore][step] + volume;
            }
        }
        return new TakenVolumes(days, taken);
    }

    /** First day. */
    public double startDay() {
        return days[0];
    }

    /** Last day. */
    public double endDay() {
        return days[days.length - 1];
    }

    /**
     * Volume taken between two days; where they fall into a step of the run, by its mean discharge.
     *
     * @param bore the bore, in the order of the stations
     * @param from first day; days before the run count as its start
     * @param to last day; days after the run count as its end
     * @return volume (m³)
     */
    public double between(int bore, double from, double to) {
        return upTo(bore, to) - upTo(bore, from);
    }

    private double upTo(int bore, double day) {
        double within = Math.min(Math.max(day, startDay()), endDay());
        return StationSeries.interpolate(days, taken[bore], within);
    }
}
