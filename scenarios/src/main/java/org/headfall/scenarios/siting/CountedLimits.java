package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.recording.PointHeads;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.solver.flow.HeadDependence;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.response.EffectFields;

/**
 * The limits of a document that new bores use up, which those on distance are not ({@link DistanceLimits}): what each has left, and what a bore in any cell takes of it. Sites that
 * are chosen use some of it up.
 */
final class CountedLimits {

    private final List<CountedLimit> counted;
    private final List<CountedVolume> volumes;

    /** One limit on volume, and the number of its name. */
    private record CountedVolume(VolumeHeadroom headroom, int reason) {}

    private CountedLimits(List<CountedLimit> counted, List<CountedVolume> volumes) {
        this.counted = counted;
        this.volumes = volumes;
    }

    /**
     * The limits of a run.
     *
     * @param base the run with the bores of the document
     * @param siting what is looked for
     * @param newBore a new bore
     * @param ruling takes the names of the limits
     * @return the limits that count for the holder of the new bores, as they are without these
     */
    static CountedLimits of(RunInMemory base, SitingSpecification siting, EffectFields.NewBore newBore, Ruling ruling) {
        RunDescription run = base.plan().description();
        List<Limit> limits = base.plan().limits().stream()
                .filter(limit -> !isOnVolume(limit) && !isOnDistance(limit))
                .filter(limit -> obstacle(limit, base, siting).isEmpty())
                .toList();
        List<Integer> stations = limits.stream()
                .map(limit -> run.stationIndex(limit.station()))
                .distinct()
                .toList();
        List<CountedVolume> volumes = volumes(base, siting, ruling);
        List<CountedLimit> counted = new ArrayList<>();
        if (stations.isEmpty()) {
            return new CountedLimits(counted, volumes);
        }
        Map<Integer, Set<Integer>> matter = new HashMap<>();
        stations.forEach(station -> matter.put(station, BentRule.thatMatter(base, station, siting.days())));
        List<HeadDependence.Point> bent = base.dependence().points().stream()
                .filter(point -> matter.values().stream().anyMatch(some -> some.contains(point.index())))
                .toList();
        List<Integer> receptors = Stream.concat(stations.stream(), bent.stream().map(HeadDependence.Point::index))
                .distinct()
                .toList();
        List<ObservedHead> points = PointHeads.of(run, base.plan().problem().boundaries());
        EffectFields fields = new EffectFields(
                base.plan().problem(),
                base.dependence(),
                points,
                receptors.stream()
                        .map(station -> receptor(base, points, station))
                        .toList(),
                newBore,
                base.plan().settings().threads());
        List<BentRule> rules = bent.stream()
                .map(point -> new BentRule(base, point, fields, receptors.indexOf(point.index()), newBore.shortest()))
                .toList();
        for (Limit limit : limits) {
            int station = run.stationIndex(limit.station());
            LimitHeadroom headroom = LimitHeadroom.of(limit, base.margins(limit), newBore.shortest(), siting.days());
            Set<Integer> matterThere = matter.getOrDefault(station, Set.of());
            counted.add(new CountedLimit(
                    headroom,
                    fields,
                    receptors.indexOf(station),
                    ruling.add(headroom.words()),
                    rules.stream()
                            .filter(rule -> matterThere.contains(rule.station()))
                            .toList()));
        }
        return new CountedLimits(counted, volumes);
    }

    private static List<CountedVolume> volumes(RunInMemory base, SitingSpecification siting, Ruling ruling) {
        return base.plan().limits().stream()
                .filter(limit ->
                        isOnVolume(limit) && obstacle(limit, base, siting).isEmpty())
                .map(limit -> VolumeHeadroom.of(limit, base, siting.days()))
                .map(headroom -> new CountedVolume(headroom, ruling.add(headroom.words())))
                .toList();
    }

    private static boolean isOnVolume(Limit limit) {
        return limit.quantity() instanceof LimitedQuantity.Volume;
    }

    private static boolean isOnDistance(Limit limit) {
        return limit.quantity() instanceof LimitedQuantity.Distance;
    }

    private static Optional<String> obstacle(Limit limit, RunInMemory base, SitingSpecification siting) {
        if (isOnDistance(limit)) {
            return DistanceLimits.obstacle(limit, base.plan(), siting);
        }
        return isOnVolume(limit)
                ? VolumeHeadroom.obstacle(limit, siting)
                : LimitHeadroom.obstacle(limit, siting.holder());
    }

    private static EffectFields.Receptor receptor(RunInMemory base, List<ObservedHead> points, int index) {
        RunDescription run = base.plan().description();
        Station station = run.stations().get(index);
        if (station instanceof Station.SpringSite) {
            return EffectFields.Receptor.spring(index, run.grid().locate(station.x(), station.y()));
        }
        if (station instanceof Station.BoreSite bore) {
            return EffectFields.Receptor.at(
                    index, base.plan().problem().nearField(bore.x(), bore.y(), bore.screenRadius()));
        }
        // What the grid does not carry depends on how a point reads its cells, which is not how a bore there would.
        return EffectFields.Receptor.at(
                index, points.get(index - run.bores().size() - run.springs().size()));
    }

    /** The limits of a run that are not counted. */
    static List<UncountedLimit> uncounted(RunInMemory base, SitingSpecification siting) {
        return base.plan().limits().stream()
                .flatMap(limit -> obstacle(limit, base, siting).stream()
                        .map(reason -> new UncountedLimit(limit.nameAndPlace(), reason, "")))
                .distinct()
                .toList();
    }

    /** Names of the limits of which nothing is left on some day. */
    List<String> usedUp() {
        Stream<String> ofHeads = counted.stream()
                .map(CountedLimit::headroom)
                .filter(one -> IntStream.range(0, one.days().length).anyMatch(day -> one.margin(day) <= 0))
                .map(LimitHeadroom::words);
        Stream<String> ofVolumes = volumes.stream()
                .map(CountedVolume::headroom)
                .filter(one -> one.largestRate() <= 0)
                .map(VolumeHeadroom::words);
        return Stream.concat(ofHeads, ofVolumes).toList();
    }

    /** What to be careful about, in sentences. */
    List<String> cautions() {
        return Stream.concat(
                        volumes.stream().flatMap(one -> one.headroom.caution().stream()),
                        counted.stream().flatMap(one -> one.caution().stream()))
                .toList();
    }

    /** Lowers the largest rate of each cell to what all limits leave. */
    void lower(RateBounds bounds) {
        for (CountedVolume one : volumes) {
            double most = one.headroom.largestRate();
            for (int cell = 0; cell < bounds.rate().length; cell++) {
                bounds.lower(cell, most, one.reason);
            }
        }
        counted.forEach(one -> one.lower(bounds));
    }

    /**
     * Lowers the rate of one bore to what all limits leave, by its own near field.
     *
     * @param bore the bore
     * @param most its rate otherwise (m³/d)
     * @param otherwise what decides that
     * @return the rate, and what decides it
     */
    Most most(NearField bore, double most, int otherwise) {
        Most found = new Most(most, otherwise);
        for (CountedVolume one : volumes) {
            found = found.orLess(Math.max(0, one.headroom.largestRate()), one.reason);
        }
        for (CountedLimit one : counted) {
            found = found.orLess(one.most(bore, found.rate), one.reason());
        }
        return found;
    }

    /**
     * A largest rate.
     *
     * @param rate the rate (m³/d)
     * @param reason what decides it, see {@link Ruling}
     */
    record Most(double rate, int reason) {

        /** A bound (m³/d), and why, if it is less than this rate; this one otherwise. */
        Most orLess(double bound, int why) {
            return bound < rate ? new Most(bound, why) : this;
        }
    }

    /** Counts a bore: it uses up a part of each limit. */
    void use(NearField bore, double rate) {
        volumes.forEach(one -> one.headroom.use(rate));
        counted.forEach(one -> one.use(bore, rate));
    }

    /** What a bore takes of each limit on the day on which least of it is left. */
    List<Site.Effect> effects(NearField bore, double rate) {
        return Stream.concat(
                        counted.stream().flatMap(one -> one.effect(bore, rate)),
                        volumes.stream().flatMap(one -> one.headroom.effect(rate).stream()))
                .toList();
    }
}
