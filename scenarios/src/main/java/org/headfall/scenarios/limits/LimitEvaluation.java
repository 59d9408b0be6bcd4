package org.headfall.scenarios.limits;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.findings.Crossing;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;

/** Evaluates limits on a recording. */
public final class LimitEvaluation {

    /** Part of the worst value by which it has to have eased for the maximum to have passed. */
    private static final double EASED = 0.01;

    private final RunDescription description;
    private final LimitEvidence evidence;

    /**
     * Evaluation of a run, for limits at stations.
     *
     * @param description the run
     * @param run what it recorded, and what it would have without the bores that a limit leaves out
     * @param headError numerical error of head by time stepping and solver at each station (m), not negative
     * @param changedRuns runs whose differences to this one are errors of it, each an error of its own
     */
    public LimitEvaluation(
            RunDescription description, RunSeries run, double[] headError, List<ChangedRun> changedRuns) {
        this(description, new LimitEvidence(run, headError, changedRuns, MapPlaces.NONE, MapSeries.NONE, Map.of()));
    }

    /**
     * Evaluation of a run.
     *
     * @param description the run
     * @param evidence what it is judged by
     */
    public LimitEvaluation(RunDescription description, LimitEvidence evidence) {
        this.description = description;
        this.evidence = evidence;
    }

    /**
     * The same, with other runs that limits compare with besides.
     *
     * @param others series of the stations in the other run, for each comparison
     */
    public LimitEvaluation beside(Map<Comparison, List<StationSeries>> others) {
        return new LimitEvaluation(
                description,
                new LimitEvidence(
                        evidence.run().with(others),
                        evidence.headError(),
                        evidence.changedRuns(),
                        evidence.places(),
                        evidence.maps(),
                        evidence.afterTaking()));
    }

    /** Whether a comparison is with another run that is known. */
    public boolean isBeside(Comparison comparison) {
        return evidence.run().others().containsKey(comparison);
    }

    /** Outcome of each limit, in their order, without shares of the causes. */
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
        return margins(limit, evidence.run());
    }

    /**
     * Margins of a limit in another run of the same stations, compared with what the run itself is compared with.
     *
     * @param limit a limit of a station of the run, for which the series it is compared with are there
     * @param changed series of each station in the other run
     * @return the margins, with the numerical error of the run itself
     */
    public LimitMargins marginsIn(Limit limit, List<StationSeries> changed) {
        return margins(limit, comparable(new RunSeries(changed, Map.of())));
    }

    private LimitMargins margins(Limit limit, RunSeries of) {
        LimitSeries counted = counted(limit, of);
        return new LimitMargins(
                counted.days(), counted.margins(), perMetre(limit, of, counted.days()), counted.error());
    }

    /** Change of the limited value per metre of head on some days, see {@link LimitMargins}. */
    private double[] perMetre(Limit limit, RunSeries of, double[] days) {
        int station = description.stationIndex(limit.station());
        LimitedQuantity quantity = limit.quantity();
        if (quantity instanceof LimitedQuantity.ShareOfAvailableHead share) {
            return heads(limit, of, station, evidence.headError()).perMetre(share, days);
        }
        if (quantity instanceof LimitedQuantity.ShareOfSpringDischarge) {
            return discharges(limit, of, station, evidence.headError()).shareOfSpringDischargePerMetre(days);
        }
        double[] same = new double[days.length];
        Arrays.fill(
                same,
                quantity instanceof LimitedQuantity.SpringDischarge
                        ? discharges(limit, of, station, evidence.headError()).perMetre()
                        : HeadProportion.ofHead(quantity));
        return same;
    }

    /**
     * Which cells a limit on the map is crossed in.
     *
     * @param limit a limit that holds for a part of the map
     * @return numbers of the cells that are beyond it at any time at which it counts
     */
    public BitSet crossedCells(Limit limit) {
        MapPlaces.Part part = evidence.places().parts().get(limit.place().words());
        return part == null
                ? new BitSet()
                : new MapEvaluation(description, evidence.maps(), evidence.changedRuns(), part).crossed(limit);
    }

    private Outcome outcome(Limit limit) {
        if (limit.quantity() instanceof LimitedQuantity.Distance distance) {
            return new DistanceEvaluation(description, evidence.places()).outcome(limit, distance);
        }
        if (limit.place() instanceof LimitPlace.OnMap map) {
            MapPlaces.Part part = evidence.places().parts().get(map.words());
            return part == null
                    ? new Outcome.NotEvaluated("No heads of cells were kept for " + map.words() + ".")
                    : new MapEvaluation(description, evidence.maps(), evidence.changedRuns(), part).outcome(limit);
        }
        Optional<String> obstacle = obstacle(limit);
        return obstacle.isPresent() ? new Outcome.NotEvaluated(obstacle.get()) : atStations(limit);
    }

    static String unknown(Limit limit) {
        return "No bore, spring or protected point is called '" + limit.station() + "'.";
    }

    /**
     * Why a limit at a station or on volumes cannot be evaluated, whenever it counts.
     *
     * @param limit the limit
     * @return the reason as a sentence; absent if it can
     */
    public Optional<String> obstacle(Limit limit) {
        if (limit.place() instanceof LimitPlace.Together together
                && together.bores().isEmpty()) {
            return Optional.of("There are no " + together.words() + ".");
        }
        if (limit.quantity() instanceof LimitedQuantity.Volume) {
            return evidence.run().volumes().isEmpty()
                    ? Optional.of("The volumes that the bores took were not kept.")
                    : Optional.empty();
        }
        if (limit.comparison() instanceof Comparison.WithoutProposedBores
                && description.bores().stream().noneMatch(Station.BoreSite::proposed)) {
            return Optional.of("There are no proposed bores.");
        }
        int station = description.stationIndex(limit.station());
        if (station < 0) {
            return Optional.of(unknown(limit));
        }
        if (limit.needsOtherRun() && evidence.run().comparedWith(limit, station).isEmpty()) {
            return Optional.of("For comparison it needs " + limit.comparison().words() + ", which was not made.");
        }
        Station place = description.stations().get(station);
        if (limit.quantity() instanceof LimitedQuantity.Flow flow
                && (flow.open().isEmpty() || !(place instanceof Station.BoreSite))) {
            return Optional.of("It is never left to flow.");
        }
        boolean ofSpring = limit.quantity() instanceof LimitedQuantity.SpringDischarge
                || limit.quantity() instanceof LimitedQuantity.ShareOfSpringDischarge;
        if (ofSpring && !(place instanceof Station.SpringSite)) {
            return Optional.of("It is no spring.");
        }
        return limit.quantity() instanceof LimitedQuantity.ShareOfAvailableHead share
                ? noAvailableHead(limit, share, station)
                : Optional.empty();
    }

    private Optional<String> noAvailableHead(Limit limit, LimitedQuantity.ShareOfAvailableHead share, int station) {
        double available =
                heads(limit, evidence.run(), station, evidence.headError()).leastAvailable(share);
        if (Double.isNaN(available)) {
            return Optional.of("The level of " + share.above().words() + " is not known.");
        }
        return available > 0
                ? Optional.empty()
                : Optional.of("Head was not above " + share.above().words() + " in what it is compared with.");
    }

    private Outcome atStations(Limit limit) {
        LimitSeries within = counted(limit, evidence.run());
        Optional<AfterTaking> after = limit.period().afterTakingStops()
                ? Optional.ofNullable(evidence.afterTaking().get(limit.comparison()))
                : Optional.empty();
        LimitSeries judged = after.isPresent() ? counted(limit, after.get()) : within;
        if (judged.days().length == 0) {
            return new Outcome.NotEvaluated("The run ends on day " + Math.round(description.endDay())
                    + ", before the limit counts or before a rate can be taken.");
        }
        double error = Math.max(within.error(), judged.error());
        for (ChangedRun changed : evidence.changedRuns()) {
            error += changed.share() * within.largestDifference(counted(limit, comparable(changed.run())));
        }
        if (limit.period().afterTakingStops() && after.isEmpty()) {
            return new Outcome.NotEvaluated("The run that goes on after taking stops was not made.");
        }
        return limit.quantity() instanceof LimitedQuantity.Volume volume
                ? judgeVolume(limit, volume, judged, error)
                : judge(limit, judged, error, after);
    }

    /** The volume of a part of a year can be beyond what is allowed for the year, but never shows that the year holds. */
    private Outcome judgeVolume(Limit limit, LimitedQuantity.Volume volume, LimitSeries series, double error) {
        VolumeValues volumes = volumes(limit, volume, evidence.run());
        int at = series.worst();
        Outcome.Worst worst = new Outcome.Worst(
                series.days()[at],
                series.values()[at],
                series.margins()[at],
                error,
                volumes.note(limit.period(), series.days()[at]));
        Outcome outcome =
                Judgement.of(limit, description.endDay(), Crossing.below(series.days(), series.margins(), 0, 0), worst);
        return outcome instanceof Outcome.Holds && !volumes.countsAWholeYear(limit.period())
                ? new Outcome.Undecided("No whole water year is judged.", OptionalDouble.empty(), worst)
                : outcome;
    }

    /** A changed run is compared with the other runs of the run itself where it has none of its own. */
    private RunSeries comparable(RunSeries changed) {
        return changed.with(evidence.run().others());
    }

    private LimitSeries counted(Limit limit, RunSeries of) {
        return counted(limit, of, description.stationIndex(limit.station()));
    }

    private LimitSeries counted(Limit limit, RunSeries of, int station) {
        return counted(limit, of, station, evidence.headError());
    }

    private LimitSeries counted(Limit limit, AfterTaking after) {
        return counted(limit, after.run(), description.stationIndex(limit.station()), after.headError());
    }

    private LimitSeries counted(Limit limit, RunSeries of, int station, double[] headError) {
        if (limit.quantity() instanceof LimitedQuantity.Volume volume) {
            VolumeValues volumes = volumes(limit, volume, of);
            return volumes.during(
                    limit.period(), volumes.series(of.series().get(0).days()));
        }
        return values(limit, of, station, headError).during(limit.period());
    }

    /**
     * Whether a run has gone on long enough after taking stopped for the worst to be over.
     *
     * @param limit a limit of a station that counts after taking stops
     * @param after the run
     * @return whether the limited value has come back from its worst by more than its error
     */
    public boolean worstHasPassed(Limit limit, AfterTaking after) {
        if (obstacle(limit).isPresent()) {
            return true;
        }
        LimitSeries series = counted(limit, after);
        return hasPassed(series, series.worst(), series.error());
    }

    private LimitSeries values(Limit limit, RunSeries of, int station, double[] headError) {
        LimitedQuantity quantity = limit.quantity();
        if (quantity instanceof LimitedQuantity.Flow flow) {
            return discharges(limit, of, station, headError).flow(flow);
        }
        if (quantity instanceof LimitedQuantity.SpringDischarge discharge) {
            return discharges(limit, of, station, headError).springDischarge(discharge);
        }
        return quantity instanceof LimitedQuantity.ShareOfSpringDischarge share
                ? discharges(limit, of, station, headError).shareOfSpringDischarge(share)
                : heads(limit, of, station, headError).of(quantity);
    }

    private VolumeValues volumes(Limit limit, LimitedQuantity.Volume volume, RunSeries of) {
        return new VolumeValues(description, of.volumes().orElseThrow(), limit.place(), volume);
    }

    private HeadValues heads(Limit limit, RunSeries of, int station, double[] headError) {
        StationSeries series = of.series().get(station);
        return new HeadValues(
                description, station, series, of.comparedWith(limit, station), limit.comparison(), headError[station]);
    }

    private DischargeValues discharges(Limit limit, RunSeries of, int station, double[] headError) {
        StationSeries series = of.series().get(station);
        return new DischargeValues(
                description, station, series, of.comparedWith(limit, station), limit.comparison(), headError[station]);
    }

    private Outcome judge(Limit limit, LimitSeries series, double error, Optional<AfterTaking> after) {
        int at = series.worst();
        double margin = series.margins()[at];
        boolean passed = after.isEmpty() || hasPassed(series, at, error);
        String note = after.map(longer -> afterTakingWords(longer, passed)).orElse("");
        Outcome.Worst worst = new Outcome.Worst(series.days()[at], series.values()[at], margin, error, note);
        OptionalDouble first = Crossing.below(series.days(), series.margins(), 0, 0);
        if (!passed && first.isEmpty()) {
            return new Outcome.Undecided(note, first, worst);
        }
        return Judgement.of(limit, after.map(AfterTaking::endDay).orElse(description.endDay()), first, worst);
    }

    /** Whether the worst is over: the value has since come back by more than its error. */
    private static boolean hasPassed(LimitSeries series, int worst, double error) {
        int last = series.days().length - 1;
        double eased = series.margins()[last] - series.margins()[worst];
        double change = Math.abs(series.values()[worst] - series.values()[0]);
        return worst < last && eased > Math.max(error, EASED * change);
    }

    private String afterTakingWords(AfterTaking after, boolean passed) {
        String stop =
                "Taking stops on " + description.calendar().at(after.stopDay()).toLocalDate();
        String end = description.calendar().at(after.endDay()).toLocalDate().toString();
        return passed
                ? stop + "; computed until " + end + ", when the worst had passed."
                : stop + "; the worst had not yet passed on " + end + ", where the computation ends.";
    }
}
