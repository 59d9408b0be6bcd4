package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.recording.PointHeads;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.response.EffectFields;

/**
 * The limits of a document that new bores use up: what each has left, and what a bore in any cell takes of it. Sites that
 * are chosen use some of it up.
 */
final class CountedLimits {

    private final List<Counted> counted;

    private record Counted(LimitHeadroom headroom, LimitHeadroom.Response response, int reason) {}

    private CountedLimits(List<Counted> counted) {
        this.counted = counted;
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
                .filter(limit -> LimitHeadroom.counts(limit, siting.holder()))
                .toList();
        List<Integer> stations = limits.stream()
                .map(limit -> run.stationIndex(limit.station()))
                .distinct()
                .toList();
        List<Counted> counted = new ArrayList<>();
        if (stations.isEmpty()) {
            return new CountedLimits(counted);
        }
        EffectFields fields = new EffectFields(
                base.plan().problem(),
                base.dependence(),
                PointHeads.of(run),
                stations.stream().map(station -> receptor(base, station)).toList(),
                newBore,
                base.plan().settings().threads());
        for (Limit limit : limits) {
            int station = run.stationIndex(limit.station());
            int receptor = stations.indexOf(station);
            LimitHeadroom headroom =
                    LimitHeadroom.of(limit, station, base.margins(limit), newBore.shortest(), siting.days());
            counted.add(new Counted(
                    headroom,
                    time -> fields.after(receptor, Math.max(time, newBore.shortest())),
                    ruling.add(headroom.words())));
        }
        return new CountedLimits(counted);
    }

    private static EffectFields.Receptor receptor(RunInMemory base, int index) {
        RunDescription run = base.plan().description();
        Station station = run.stations().get(index);
        if (station instanceof Station.SpringSite) {
            return EffectFields.Receptor.spring(index, run.grid().locate(station.x(), station.y()));
        }
        double radius = station instanceof Station.BoreSite bore ? bore.screenRadius() : 0;
        return EffectFields.Receptor.at(
                index, NearField.at(base.plan().problem().aquifer(), station.x(), station.y(), radius));
    }

    /** Lowers the largest rate of each cell to what all limits leave. */
    void lower(RateBounds bounds) {
        for (Counted one : counted) {
            for (int day = 0; day < one.headroom.days().length; day++) {
                double[] effect = one.headroom.effect(day, one.response);
                for (int cell = 0; cell < effect.length; cell++) {
                    if (effect[cell] > 0) {
                        bounds.lower(cell, one.headroom.margin(day) / effect[cell], one.reason);
                    }
                }
            }
        }
    }

    /** Counts a bore in a cell: it uses up a part of each limit. */
    void use(int cell, double rate) {
        for (Counted one : counted) {
            for (int day = 0; day < one.headroom.days().length; day++) {
                one.headroom.use(day, rate * one.headroom.effect(day, one.response)[cell]);
            }
        }
    }

    /** What a bore in a cell takes of each limit on the day on which least of it is left. */
    List<Site.Effect> effects(int cell, double rate) {
        return counted.stream().flatMap(one -> effect(one, cell, rate)).toList();
    }

    private static Stream<Site.Effect> effect(Counted one, int cell, double rate) {
        LimitHeadroom headroom = one.headroom;
        int tightest = -1;
        for (int day = 0; day < headroom.days().length; day++) {
            if (tightest < 0 || headroom.margin(day) < headroom.margin(tightest)) {
                tightest = day;
            }
        }
        if (tightest < 0) {
            return Stream.empty();
        }
        return Stream.of(new Site.Effect(
                headroom.words(),
                headroom.limit().quantity().unit(),
                headroom.days()[tightest],
                rate * headroom.effect(tightest, one.response)[cell],
                headroom.margin(tightest)));
    }
}
