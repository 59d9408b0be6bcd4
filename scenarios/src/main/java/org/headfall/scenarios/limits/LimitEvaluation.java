package org.headfall.scenarios.limits;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.findings.Crossing;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;

/** Evaluates limits on a recording. */
public final class LimitEvaluation {

    private final RunDescription description;
    private final Recording recording;
    private final Map<Comparison, List<StationSeries>> others;
    private final double[] headError;

    /**
     * Evaluation of a run.
     *
     * @param description the run
     * @param recording what it recorded
     * @param others for each comparison with another run, its series of the same stations
     * @param headError numerical error of head at each station (m), not negative
     */
    public LimitEvaluation(
            RunDescription description,
            Recording recording,
            Map<Comparison, List<StationSeries>> others,
            double[] headError) {
        this.description = description;
        this.recording = recording;
        this.others = Map.copyOf(others);
        this.headError = headError.clone();
    }

    /** Outcome of each limit, in their order. */
    public List<LimitResult> evaluate(List<Limit> limits) {
        return limits.stream()
                .map(limit -> new LimitResult(limit, outcome(limit)))
                .toList();
    }

    private Outcome outcome(Limit limit) {
        int station = description.stationIndex(limit.station());
        if (station < 0) {
            return new Outcome.NotEvaluated("No bore, spring or protected point is called '" + limit.station() + "'.");
        }
        Optional<StationSeries> without = Optional.ofNullable(others.get(limit.comparison()))
                .filter(other -> limit.needsOtherRun())
                .map(other -> other.get(station));
        if (limit.needsOtherRun() && without.isEmpty()) {
            return new Outcome.NotEvaluated(
                    "For comparison it needs " + limit.comparison().words() + ", which was not made.");
        }
        LimitSeries all = LimitSeries.of(
                limit.quantity(), description.calendar(), recording.series().get(station), without, headError[station]);
        LimitSeries counted = all.during(limit.period());
        if (counted.days().length == 0) {
            return new Outcome.NotEvaluated("The run ends on day " + Math.round(recording.endDay())
                    + ", before the limit counts or before a rate can be taken.");
        }
        return judge(limit, counted);
    }

    private Outcome judge(Limit limit, LimitSeries series) {
        int at = series.worst();
        double margin = series.margins()[at];
        Outcome.Worst worst = new Outcome.Worst(series.days()[at], series.values()[at], margin, series.error());
        OptionalDouble first = Crossing.below(series.days(), series.margins(), 0, 0);
        if (Math.abs(margin) < series.error()) {
            return new Outcome.Undecided("The margin is smaller than the numerical error.", first, worst);
        }
        if (first.isPresent()) {
            return new Outcome.Crossed(first.getAsDouble(), worst);
        }
        if (limit.period().toDay().orElse(recording.endDay()) > recording.endDay()) {
            return new Outcome.Undecided(
                    "It holds to the end of the run, but counts for longer than the run lasts.", first, worst);
        }
        return new Outcome.Holds(worst);
    }
}
