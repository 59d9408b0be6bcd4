package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.quantity.LiftEnergy;
import org.headfall.scenarios.quantity.VolumeUnit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.scenario.AllocationSpecification;

/** What rates mean: yields, energy, limits that had to give way, and what water is worth elsewhere. */
final class AllocationFindings {

    private final RunDescription run;
    private final AllocationSpecification wanted;
    private final RateBlocks blocks;
    private final int[] bores;
    private final double[] moments;
    private final RateEffects effects;
    private final AllocationWishes wishes;

    /**
     * Findings.
     *
     * @param run the run
     * @param wanted what is wanted
     * @param blocks when rates may differ
     * @param bores the bores that share, by their place in the run
     * @param moments a day of each block on which levels are looked at (d)
     * @param effects the variables
     * @param wishes the goal
     */
    AllocationFindings(
            RunDescription run,
            AllocationSpecification wanted,
            RateBlocks blocks,
            int[] bores,
            double[] moments,
            RateEffects effects,
            AllocationWishes wishes) {
        this.run = run;
        this.wanted = wanted;
        this.blocks = blocks;
        this.bores = bores.clone();
        this.moments = moments.clone();
        this.effects = effects;
        this.wishes = wishes;
    }

    /**
     * The whole result.
     *
     * @param best the rates
     * @param evenly bores that share evenly, by their number
     * @param with the run with them
     * @param drawdown what rates do near these
     * @param relaxed by how much each requirement had to give way
     * @param requirements the requirements
     * @param kept the same with what is left of them
     * @param rounds how often rates were run
     */
    AllocationResult of(
            SharedWater.Best best,
            List<List<Integer>> evenly,
            RunInMemory with,
            DrawdownByRates drawdown,
            double[] relaxed,
            Requirements requirements,
            List<AllocationResult.Kept> kept,
            AllocationResult.Rounds rounds) {
        List<AllocationResult.BoreRates> all = boreRates(best.rates());
        return new AllocationResult(
                run,
                wanted,
                blocks,
                all,
                evenly.stream()
                        .map(set -> set.stream().map(wanted.bores()::get).toList())
                        .toList(),
                all.stream().mapToDouble(AllocationResult.BoreRates::yield).sum(),
                energy(best.rates(), with),
                kept,
                gaveWay(requirements.all(), relaxed),
                exchanges(requirements.all(), drawdown),
                wishes.goalUnit(),
                uncounted(with),
                rounds);
    }

    private List<AllocationResult.BoreRates> boreRates(double[] rates) {
        List<AllocationResult.BoreRates> all = new ArrayList<>();
        for (int b = 0; b < bores.length; b++) {
            List<Double> own = new ArrayList<>();
            double mean = 0;
            for (int group = 0; group < blocks.groups(); group++) {
                double rate = rates[effects.variables().variable(b, group)];
                own.add(rate);
                mean += rate * blocks.days(group) / wanted.days();
            }
            all.add(new AllocationResult.BoreRates(wanted.bores().get(b), own, mean));
        }
        return all;
    }

    private double energy(double[] rates, RunInMemory with) {
        double sum = 0;
        for (int k = 0; k < moments.length; k++) {
            RateBlocks.Block block = blocks.blocks().get(k);
            for (int b = 0; b < bores.length; b++) {
                double level = with.recording().series().get(bores[b]).levelInBoreAt(moments[k]);
                double volume =
                        VolumeUnit.MEGALITRES.of(rates[effects.variables().variable(b, block.group())] * block.days());
                sum += volume * LiftEnergy.perMegalitre(Math.max(0, wishes.delivery(b) - level), wanted.efficiency());
            }
        }
        return sum / wanted.days();
    }

    private static List<AllocationResult.Relaxed> gaveWay(List<Requirement> requirements, double[] relaxed) {
        List<AllocationResult.Relaxed> gaveWay = new ArrayList<>();
        for (int r = 0; r < relaxed.length; r++) {
            if (relaxed[r] > 0) {
                Requirement one = requirements.get(r);
                double amount = -one.left(-relaxed[r]);
                gaveWay.add(new AllocationResult.Relaxed(
                        one.name(), one.unit(), amount, one.allowed(), one.allowedAfter(amount)));
            }
        }
        return gaveWay;
    }

    /**
     * A requirement with what is left of it.
     *
     * @param one the requirement
     * @param effects effect of the rates on each of its days, by superposition
     * @param found what the run with the rates leaves on each of its days
     * @param relaxed by how much it had to give way
     * @param reserve what is kept free of it for its numerical error
     * @param price its price
     */
    static AllocationResult.Kept kept(
            Requirement one, double[] effects, double[] found, double relaxed, double reserve, LimitPrice price) {
        int tightest = one.tightest(effects, 0, effects.length);
        boolean none = effects.length == 0;
        return new AllocationResult.Kept(
                one.name(),
                one.limit().isPresent(),
                relaxed > 0,
                one.places(),
                one.unit(),
                one.unitOfChange(),
                none ? Double.NaN : one.days()[tightest],
                none ? Double.NaN : one.left(one.base(tightest) - effects[tightest] + reserve - relaxed),
                Arrays.stream(found).min().stream().map(one::left).findFirst().orElse(Double.NaN),
                reserve,
                price.price(),
                price.gain(),
                none
                        ? one.wordsIfOnNoDay()
                        : Stream.of(price.remark(one.unitOfChange()), one.wordsOnMeters(tightest))
                                .filter(remark -> !remark.isEmpty())
                                .collect(Collectors.joining("; ")));
    }

    private List<AllocationResult.Exchange> exchanges(List<Requirement> requirements, DrawdownByRates drawdown) {
        Set<String> places = new TreeSet<>();
        for (Station station : run.stations()) {
            if (station instanceof Station.ProtectedPoint || station instanceof Station.SpringSite) {
                places.add(station.name());
            }
        }
        for (Requirement one : requirements) {
            if (one.subject() instanceof Requirement.OfLimit of) {
                places.add(of.limit().station());
            }
        }
        List<AllocationResult.Exchange> exchanges = new ArrayList<>();
        for (String place : places) {
            double[] there = drawdown.bySteady(run.stationIndex(place), wanted.days());
            for (int from = 0; from < bores.length; from++) {
                for (int to = 0; to < bores.length; to++) {
                    if (from != to && there[to] > 0) {
                        exchanges.add(new AllocationResult.Exchange(
                                place, wanted.bores().get(from), wanted.bores().get(to), there[from] / there[to]));
                    }
                }
            }
        }
        return exchanges;
    }

    /** Limits that superposition cannot keep, with what the simulator says of them. */
    private static List<UncountedLimit> uncounted(RunInMemory with) {
        Set<UncountedLimit> uncounted = new LinkedHashSet<>();
        for (LimitResult one : with.limits()) {
            Requirements.obstacle(one.limit(), with)
                    .ifPresent(reason ->
                            uncounted.add(new UncountedLimit(one.limit().nameAndPlace(), reason, outcome(one, with))));
        }
        return List.copyOf(uncounted);
    }

    /** What a run says of a limit; empty where it says no more than why the limit is not counted. */
    private static String outcome(LimitResult judged, RunInMemory with) {
        Limit limit = judged.limit();
        Outcome outcome = judged.outcome();
        if (outcome instanceof Outcome.NotEvaluated none) {
            return limit.place() instanceof LimitPlace.OnMap
                    ? "not judged, as the search looks at bores, springs and points only"
                    : with.obstacle(limit).isPresent()
                            ? ""
                            : "not judged: " + none.reason().replaceFirst("\\.$", "");
        }
        return outcome.words()
                + outcome.worstIfAny()
                        .map(worst -> String.format(
                                Locale.ROOT,
                                ", worst %.2f %s, allowed %.2f",
                                worst.value(),
                                limit.quantity().unit(),
                                limit.quantity().allowed()))
                        .orElse("");
    }
}
