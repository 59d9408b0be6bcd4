package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
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
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.response.EffectFields;

/**
 * The limits of a document that new bores use up: what each has left, and what a bore in any cell takes of it. Sites that
 * are chosen use some of it up.
 */
final class CountedLimits {

    private final List<Counted> counted;
    private final List<CountedVolume> volumes;

    /** One limit on volume, and the number of its name. */
    private record CountedVolume(VolumeHeadroom headroom, int reason) {}

    /**
     * One limit: what is left of it, and drawdown at its station by a bore in any cell, or by one bore. Effects are those of
     * taking that uses up the limit: with the chord of what a place gives back over just that fall, so bounds of rates are
     * right though its rule bends.
     */
    private static final class Counted {

        private final LimitHeadroom headroom;
        private final EffectFields fields;
        private final int receptor;
        private final int reason;
        private final Optional<GivingPlace> giving;
        private final double[] factors;

        Counted(LimitHeadroom headroom, EffectFields fields, int receptor, int reason, Optional<GivingPlace> giving) {
            this.headroom = headroom;
            this.fields = fields;
            this.receptor = receptor;
            this.reason = reason;
            this.giving = giving;
            factors = IntStream.range(0, headroom.days().length)
                    .mapToDouble(day -> giving.map(place -> place.factor(headroom.days()[day], headroom.metres(day)))
                            .orElse(1.0))
                    .toArray();
        }

        // Days are late enough for what fields know well. A moment that a value is measured from may be earlier: the
        // response of a
        // later day would take too much away.
        double[] effect(int day) {
            double[] effect = headroom.effect(day, time -> fields.after(receptor, time));
            Arrays.setAll(effect, cell -> factors[day] * effect[cell]);
            return effect;
        }

        double effectOf(NearField bore, int day) {
            return factors[day] * headroom.effectOfOne(day, time -> fields.by(receptor, bore, time));
        }

        /** Effect of all bores as things stand over that which uses up the limit (-). */
        double asItStands(int day) {
            double fall = headroom.metresUsed(day);
            return giving.isPresent() && fall > 0
                    ? giving.get().fall(headroom.days()[day], fall / factors[day]) / fall
                    : 1;
        }
    }

    private CountedLimits(List<Counted> counted, List<CountedVolume> volumes) {
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
                .filter(limit -> !isOnVolume(limit) && obstacle(limit, siting).isEmpty())
                .toList();
        List<Integer> stations = limits.stream()
                .map(limit -> run.stationIndex(limit.station()))
                .distinct()
                .toList();
        List<CountedVolume> volumes = volumes(base, siting, ruling);
        List<Counted> counted = new ArrayList<>();
        if (stations.isEmpty()) {
            return new CountedLimits(counted, volumes);
        }
        EffectFields fields = new EffectFields(
                base.plan().problem(),
                base.dependence(),
                PointHeads.of(run, base.plan().problem().boundaries()),
                stations.stream().map(station -> receptor(base, station)).toList(),
                newBore,
                base.plan().settings().threads());
        for (Limit limit : limits) {
            int station = run.stationIndex(limit.station());
            int receptor = stations.indexOf(station);
            LimitHeadroom headroom =
                    LimitHeadroom.of(limit, station, base.margins(limit), newBore.shortest(), siting.days());
            // The difference of two falls is straight but for the difference of their bends.
            Optional<GivingPlace> giving = headroom.isOneFall()
                    ? GivingPlace.of(base, station, fields, receptor, newBore.shortest())
                    : Optional.empty();
            counted.add(new Counted(headroom, fields, receptor, ruling.add(headroom.words()), giving));
        }
        return new CountedLimits(counted, volumes);
    }

    private static List<CountedVolume> volumes(RunInMemory base, SitingSpecification siting, Ruling ruling) {
        return base.plan().limits().stream()
                .filter(limit -> isOnVolume(limit) && obstacle(limit, siting).isEmpty())
                .map(limit -> VolumeHeadroom.of(limit, base, siting.days()))
                .map(headroom -> new CountedVolume(headroom, ruling.add(headroom.words())))
                .toList();
    }

    private static boolean isOnVolume(Limit limit) {
        return limit.quantity() instanceof LimitedQuantity.Volume;
    }

    private static Optional<String> obstacle(Limit limit, SitingSpecification siting) {
        return isOnVolume(limit)
                ? VolumeHeadroom.obstacle(limit, siting)
                : LimitHeadroom.obstacle(limit, siting.holder());
    }

    private static EffectFields.Receptor receptor(RunInMemory base, int index) {
        RunDescription run = base.plan().description();
        Station station = run.stations().get(index);
        if (station instanceof Station.SpringSite) {
            return EffectFields.Receptor.spring(index, run.grid().locate(station.x(), station.y()));
        }
        double radius = station instanceof Station.BoreSite bore ? bore.screenRadius() : 0;
        return EffectFields.Receptor.at(index, base.plan().problem().nearField(station.x(), station.y(), radius));
    }

    /** The limits of a run that are not counted. */
    static List<UncountedLimit> uncounted(RunInMemory base, SitingSpecification siting) {
        return base.plan().limits().stream()
                .flatMap(limit -> obstacle(limit, siting).stream()
                        .map(reason -> new UncountedLimit(limit.nameAndPlace(), reason, "")))
                .distinct()
                .toList();
    }

    /** Names of the limits of which nothing is left on some day. */
    List<String> usedUp() {
        Stream<String> ofHeads = counted.stream()
                .map(one -> one.headroom)
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
        return volumes.stream().flatMap(one -> one.headroom.caution().stream()).toList();
    }

    /** Lowers the largest rate of each cell to what all limits leave. */
    void lower(RateBounds bounds) {
        for (CountedVolume one : volumes) {
            double most = one.headroom.largestRate();
            for (int cell = 0; cell < bounds.rate().length; cell++) {
                bounds.lower(cell, most, one.reason);
            }
        }
        for (Counted one : counted) {
            for (int day = 0; day < one.headroom.days().length; day++) {
                double[] effect = one.effect(day);
                for (int cell = 0; cell < effect.length; cell++) {
                    if (effect[cell] > 0) {
                        bounds.lower(cell, one.headroom.margin(day) / effect[cell], one.reason);
                    }
                }
            }
        }
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
            double bound = Math.max(0, one.headroom.largestRate());
            found = bound < found.rate ? new Most(bound, one.reason) : found;
        }
        for (Counted one : counted) {
            for (int day = 0; day < one.headroom.days().length; day++) {
                double effect = one.effectOf(bore, day);
                double bound = Math.max(0, one.headroom.margin(day)) / effect;
                if (effect > 0 && bound < found.rate) {
                    found = new Most(bound, one.reason);
                }
            }
        }
        return found;
    }

    /**
     * A largest rate.
     *
     * @param rate the rate (m³/d)
     * @param reason what decides it, see {@link Ruling}
     */
    record Most(double rate, int reason) {}

    /** Counts a bore: it uses up a part of each limit. */
    void use(NearField bore, double rate) {
        volumes.forEach(one -> one.headroom.use(rate));
        for (Counted one : counted) {
            for (int day = 0; day < one.headroom.days().length; day++) {
                one.headroom.use(day, rate * one.effectOf(bore, day));
            }
        }
    }

    /** What a bore takes of each limit on the day on which least of it is left. */
    List<Site.Effect> effects(NearField bore, double rate) {
        return Stream.concat(
                        counted.stream().flatMap(one -> effect(one, bore, rate)),
                        volumes.stream().flatMap(one -> one.headroom.effect(rate).stream()))
                .toList();
    }

    private static Stream<Site.Effect> effect(Counted one, NearField bore, double rate) {
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
        double share = one.asItStands(tightest);
        return Stream.of(new Site.Effect(
                headroom.words(),
                headroom.limit().quantity().unit(),
                headroom.days()[tightest],
                rate * one.effectOf(bore, tightest) * share,
                headroom.margin(tightest) + headroom.used(tightest) * (1 - share)));
    }
}
