package org.headfall.scenarios.limits;

import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.findings.Crossing;
import org.headfall.scenarios.recording.RunDescription;

/** Evaluates limits on a recording. */
public final class LimitEvaluation {

    private final RunDescription description;
    private final RunSeries run;
    private final double[] headError;
    private final List<ChangedRun> changedRuns;

    /**
     * Evaluation of a run.
     *
     * @param description the run
     * @param run what it recorded, and what it would have without the bores that a limit leaves out
     * @param headError numerical error of head by time stepping and solver at each station (m), not negative
     * @param changedRuns runs whose differences to this one are errors of it, each an error of its own
     */
    public LimitEvaluation(
            RunDescription description, RunSeries run, double[] headError, List<ChangedRun> changedRuns) {
        this.description = description;
        this.run = run;
        this.headError = headError.clone();
        this.changedRuns = List.copyOf(changedRuns);
    }

    /** Outcome of each limit, in their order. */
    public List<LimitResult> evaluate(List<Limit> limits) {
        return limits.stream()
                .map(limit -> new LimitResult(limit, outcome(limit)))
                .toList();
    }

    /**
     * Margins of a limit over time.
     *
     * @param limit a limit of a station of the run, for which the series it is compared with are there
     * @return the margins
     */
    public LimitMargins margins(Limit limit) {
        LimitSeries counted = counted(limit, run, description.stationIndex(limit.station()));
        return new LimitMargins(counted.days(), counted.margins());
    }

    private Outcome outcome(Limit limit) {
        int station = description.stationIndex(limit.station());
        if (station < 0) {
            return new Outcome.NotEvaluated("No bore, spring or protected point is called '" + limit.station() + "'.");
        }
        if (limit.needsOtherRun() && run.comparedWith(limit, station).isEmpty()) {
            return new Outcome.NotEvaluated(
                    "For comparison it needs " + limit.comparison().words() + ", which was not made.");
        }
        LimitSeries counted = counted(limit, run, station);
        if (counted.days().length == 0) {
            return new Outcome.NotEvaluated("The run ends on day " + Math.round(description.endDay())
                    + ", before the limit counts or before a rate can be taken.");
        }
        double error = counted.error();
        for (ChangedRun changed : changedRuns) {
            error += changed.share() * counted.largestDifference(counted(limit, changed.run(), station));
        }
        return judge(limit, counted, error);
    }

    private LimitSeries counted(Limit limit, RunSeries of, int station) {
        return LimitSeries.of(
                        limit.quantity(),
                        description.calendar(),
                        of.series().get(station),
                        of.comparedWith(limit, station),
                        headError[station])
                .during(limit.period());
    }

    private Outcome judge(Limit limit, LimitSeries series, double error) {
        int at = series.worst();
        double margin = series.margins()[at];
        Outcome.Worst worst = new Outcome.Worst(series.days()[at], series.values()[at], margin, error);
        OptionalDouble first = Crossing.below(series.days(), series.margins(), 0, 0);
        if (Math.abs(margin) < error) {
            return new Outcome.Undecided("The margin is smaller than the numerical error.", first, worst);
        }
        if (first.isPresent()) {
            return new Outcome.Crossed(first.getAsDouble(), worst);
        }
        if (limit.period().toDay().orElse(description.endDay()) > description.endDay()) {
            return new Outcome.Undecided(
                    "It holds to the end of the run, but counts for longer than the run lasts.", first, worst);
        }
        return new Outcome.Holds(worst);
    }
}
