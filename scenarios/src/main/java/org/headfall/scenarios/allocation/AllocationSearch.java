package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.HeadProportion;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitMargins;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.quantity.LiftEnergy;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunProgress;
import org.headfall.scenarios.scenario.AllocationSpecification;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.solver.allocation.Optimum;
import org.headfall.solver.allocation.Row;
import org.headfall.solver.bore.Bore;

/** Finds the rates of an allocation. Use one object a search. */
public final class AllocationSearch {

    /** Moments on which levels are looked at lie this long before a rate changes (d). */
    private static final double BEFORE_CHANGE = 0.5;

    private static final double ALLOWED_VIOLATION = 5e-4;
    private static final int MOST_SIMULATIONS = 10;

    /** Change of the goal from one simulation to the next at which rates have settled. */
    private static final double SETTLED = 5e-4;

    private static final double STEP = 0.1;
    private static final double KEPT_SHARE = 1 - 1e-6;

    private final RunPlan plan;
    private final RunDescription run;
    private final AllocationSpecification wanted;
    private final RateBlocks blocks;
    private final int[] bores;
    private final double[] floors;
    private final RatesInPlan rates;
    private final double[] moments;
    private final List<Limit> limits;
    private final List<Requirement> requirements = new ArrayList<>();
    private final RunInMemory without;
    private final SharedWater water;
    private final AllocationWishes wishes;

    private AllocationSearch(
            RunPlan plan,
            Scenario scenario,
            AllocationSpecification wanted,
            PlanningResponses responses,
            RunProgress progress) {
        this.plan = plan;
        this.wanted = wanted;
        run = plan.description();
        limits = plan.limits().stream()
                .filter(limit -> HeadProportion.obstacle(limit).isEmpty())
                .toList();
        blocks = RateBlocks.of(wanted, run.calendar(), run.endDay());
        bores = wanted.bores().stream().mapToInt(run::stationIndex).toArray();
        floors = Arrays.stream(bores)
                .mapToDouble(bore -> floor(scenario.bores().get(bore)))
                .toArray();
        rates = new RatesInPlan(plan, blocks, bores);
        moments = blocks.blocks().stream()
                .mapToDouble(block -> Math.max(block.start() + BEFORE_CHANGE / 2, block.end() - BEFORE_CHANGE))
                .toArray();
        without = RunInMemory.of(
                rates.with(new double[bores.length * blocks.groups()], moments),
                responses.orComputed(plan, progress),
                new double[0],
                progress);
        addRequirements();
        water = new SharedWater(without.responses(), blocks, bores, requirements);
        wishes = new AllocationWishes(plan, wanted, blocks, bores, moments, without, water);
    }

    private static double floor(BoreSpecification bore) {
        return bore.levels().pumpingFloor().orElse(Double.NEGATIVE_INFINITY);
    }

    /**
     * Searches.
     *
     * @param plan the plan of the document
     * @param scenario the document, with an allocation
     * @param responses unit responses, if an earlier run has left any
     * @param progress is told how far the search has come
     * @return the rates
     * @throws ContradictionException if what is wanted cannot be had though all limits gave way
     */
    public static AllocationResult in(
            RunPlan plan, Scenario scenario, PlanningResponses responses, RunProgress progress) {
        AllocationSpecification wanted = scenario.planning().allocation().orElseThrow();
        return new AllocationSearch(plan, scenario, wanted, responses, progress).search(progress);
    }

    private void addRequirements() {
        double[] last = without.recording().series().get(0).days();
        for (Limit limit : limits) {
            LimitMargins margins = without.margins(limit);
            double[] days = Arrays.stream(margins.days()).filter(day -> day > 0).toArray();
            int years = limit.quantity() instanceof LimitedQuantity.DeclineRate rate ? rate.overYears() : 0;
            add(
                    new Requirement(
                            limit.nameAndPlace(),
                            limit.quantity().unit(),
                            run.stationIndex(limit.station()),
                            years,
                            HeadProportion.perMetre(limit.quantity()),
                            counted(limit),
                            days,
                            Optional.empty()),
                    margins.days(),
                    margins.margins());
        }
        for (int b = 0; b < bores.length; b++) {
            if (Double.isFinite(floors[b])) {
                Bore bore = plan.problem().bores().get(bores[b]);
                int cell = run.grid().locate(bore.x(), bore.y());
                double transmissivity = Math.sqrt(
                        run.aquifer().transmissivityX()[cell] * run.aquifer().transmissivityY()[cell]);
                boolean[] all = new boolean[bores.length];
                Arrays.fill(all, true);
                Requirement.Level level = new Requirement.Level(b, bore.lossIn(transmissivity));
                add(
                        new Requirement(
                                "lowest level (" + bore.name() + ")",
                                "m",
                                bores[b],
                                0,
                                1,
                                all,
                                moments,
                                Optional.of(level)),
                        last,
                        levelMargins(without.recording().series().get(bores[b]), b));
            }
        }
    }

    private double[] levelMargins(StationSeries series, int bore) {
        return Arrays.stream(series.levelInBore())
                .map(level -> level - floors[bore])
                .toArray();
    }

    private void add(Requirement one, double[] days, double[] margins) {
        for (int k = 0; k < one.days().length; k++) {
            one.setBase(k, StationSeries.interpolate(days, margins, one.days()[k]));
        }
        requirements.add(one);
    }

    private boolean[] counted(Limit limit) {
        boolean[] counted = new boolean[bores.length];
        for (int b = 0; b < counted.length; b++) {
            Station.BoreSite bore = run.bores().get(bores[b]);
            counted[b] = !limit.needsOtherRun() || counts(limit.comparison(), bore);
        }
        return counted;
    }

    private static boolean counts(Comparison comparison, Station.BoreSite bore) {
        if (comparison instanceof Comparison.WithoutHolder of) {
            return of.holder().equals(bore.holder());
        }
        return !(comparison instanceof Comparison.WithoutBores of) || of.bores().contains(bore.name());
    }

    /** Limits that superposition cannot keep, with what the simulator says of them. */
    private List<UncountedLimit> uncounted(RunInMemory with) {
        Set<UncountedLimit> uncounted = new LinkedHashSet<>();
        for (LimitResult one : with.limits()) {
            HeadProportion.obstacle(one.limit())
                    .ifPresent(reason -> uncounted.add(new UncountedLimit(
                            one.limit().nameAndPlace(), reason, outcome(one.limit(), one.outcome()))));
        }
        return List.copyOf(uncounted);
    }

    private static String outcome(Limit limit, Outcome outcome) {
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

    private double allowed(int requirement) {
        return requirement < limits.size()
                ? limits.get(requirement).quantity().allowed()
                : floors[requirements.get(requirement).level().orElseThrow().bore()];
    }

    private boolean fromBelow(int requirement) {
        return requirement >= limits.size()
                || limits.get(requirement).quantity().limitsFromBelow();
    }

    private AllocationResult search(RunProgress progress) {
        double[] relaxed = new double[requirements.size()];
        Optimum best = best(relaxed);
        RunInMemory with = simulated(best.x(), progress);
        int simulations = 1;
        double before = Double.NaN;
        // Springs and rules make effects smaller or larger than superposed; what they do at these rates counts next.
        while (simulations < MOST_SIMULATIONS
                && (worst(with) < -ALLOWED_VIOLATION
                        || !(Math.abs(best.value() - before) < SETTLED * Math.abs(before)))) {
            before = best.value();
            learn(with, best.x(), relaxed);
            best = best(relaxed);
            with = simulated(best.x(), progress);
            simulations++;
        }
        progress.reached("asking what limits cost", 0);
        return result(best, with, relaxed, simulations);
    }

    private RunInMemory simulated(double[] x, RunProgress progress) {
        return RunInMemory.of(rates.with(x, moments), without.responses(), new double[0], progress);
    }

    private double[][] simulatedMargins(RunInMemory with) {
        double[][] margins = new double[requirements.size()][];
        for (int r = 0; r < margins.length; r++) {
            Requirement one = requirements.get(r);
            double[] days;
            double[] values;
            if (one.level().isPresent()) {
                StationSeries series = with.recording().series().get(one.station());
                days = series.days();
                values = levelMargins(series, one.level().get().bore());
            } else {
                LimitMargins of = with.margins(limits.get(r));
                days = of.days();
                values = of.margins();
            }
            margins[r] = Arrays.stream(one.days())
                    .map(day -> StationSeries.interpolate(days, values, day))
                    .toArray();
        }
        return margins;
    }

    private double worst(RunInMemory with) {
        return Arrays.stream(simulatedMargins(with))
                .flatMapToDouble(Arrays::stream)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** Sets what is left without the bores so that superposition gives what the simulator found at these rates. */
    private void learn(RunInMemory with, double[] x, double[] relaxed) {
        double[][] found = simulatedMargins(with);
        double[][] effects = water.effects(x);
        for (int r = 0; r < found.length; r++) {
            for (int k = 0; k < found[r].length; k++) {
                requirements.get(r).setBase(k, found[r][k] + effects[r][k] + relaxed[r]);
            }
        }
    }

    private Optimum best(double[] relaxed) {
        List<Row> fixed = new ArrayList<>(wishes.rows());
        for (String holder : wanted.seniority()) {
            Optimum optimum = water.solve(wishes.largestYieldOf(holder), fixed, relaxed);
            fixed.add(wishes.atLeast(holder, optimum.value() * KEPT_SHARE));
        }
        return water.solve(wishes.goal(), fixed, relaxed);
    }

    private AllocationResult result(Optimum best, RunInMemory with, double[] relaxed, int simulations) {
        double[][] effects = water.effects(best.x());
        double[][] found = simulatedMargins(with);
        TreeMap<Integer, Double> prices = new TreeMap<>();
        best.prices().forEach((name, price) -> {
            int requirement = SharedWater.requirementOf(name);
            if (requirement >= 0) {
                prices.merge(requirement, price, Double::sum);
            }
        });
        List<AllocationResult.Kept> kept = new ArrayList<>();
        List<AllocationResult.Relaxed> gaveWay = new ArrayList<>();
        for (int r = 0; r < requirements.size(); r++) {
            kept.add(kept(r, effects[r], found[r], best, prices.getOrDefault(r, 0.0)));
            if (relaxed[r] > 0) {
                Requirement one = requirements.get(r);
                double allowed = allowed(r);
                double needed = allowed + (fromBelow(r) ? -relaxed[r] : relaxed[r]);
                gaveWay.add(new AllocationResult.Relaxed(one.name(), one.unit(), relaxed[r], allowed, needed));
            }
        }
        List<AllocationResult.BoreRates> all = new ArrayList<>();
        double yield = 0;
        for (int b = 0; b < bores.length; b++) {
            List<Double> own = new ArrayList<>();
            double mean = 0;
            for (int group = 0; group < blocks.groups(); group++) {
                double rate = best.x()[water.variable(b, group)];
                own.add(rate);
                mean += rate * blocks.days(group) / run.endDay();
            }
            yield += mean;
            all.add(new AllocationResult.BoreRates(wanted.bores().get(b), own, mean));
        }
        return new AllocationResult(
                run,
                blocks,
                all,
                yield,
                energyOf(best.x(), with),
                kept,
                gaveWay,
                exchanges(),
                wishes.goalUnit(),
                uncounted(with),
                simulations);
    }

    private AllocationResult.Kept kept(int r, double[] effects, double[] found, Optimum best, double price) {
        Requirement one = requirements.get(r);
        int tightest = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < effects.length; k++) {
            if (one.base(k) - effects[k] < one.base(tightest) - effects[tightest]) {
                tightest = k;
            }
            least = Math.min(least, found[k]);
        }
        double gain = 0;
        if (price > 0) {
            one.relax(STEP);
            gain = best.value() - best(new double[requirements.size()]).value();
            one.relax(-STEP);
        }
        boolean none = effects.length == 0;
        return new AllocationResult.Kept(
                one.name(),
                one.unit(),
                none ? Double.NaN : one.days()[tightest],
                none ? Double.NaN : one.base(tightest) - effects[tightest],
                least,
                price,
                gain);
    }

    private double energyOf(double[] x, RunInMemory with) {
        double sum = 0;
        for (int k = 0; k < moments.length; k++) {
            RateBlocks.Block block = blocks.blocks().get(k);
            for (int b = 0; b < bores.length; b++) {
                double level = with.recording().series().get(bores[b]).levelInBoreAt(moments[k]);
                double volume = x[water.variable(b, block.group())] * block.days() / 1000;
                sum += volume * LiftEnergy.perMegalitre(Math.max(0, wishes.delivery(b) - level), wanted.efficiency());
            }
        }
        return sum / run.endDay();
    }

    private List<AllocationResult.Exchange> exchanges() {
        List<AllocationResult.Exchange> exchanges = new ArrayList<>();
        for (String place : new TreeSet<>(limits.stream().map(Limit::station).toList())) {
            int station = run.stationIndex(place);
            for (int from = 0; from < bores.length; from++) {
                for (int to = 0; to < bores.length; to++) {
                    double there = without.responses().at(station, bores[to], run.endDay());
                    if (from != to && there > 0) {
                        double here = without.responses().at(station, bores[from], run.endDay());
                        exchanges.add(new AllocationResult.Exchange(
                                place, wanted.bores().get(from), wanted.bores().get(to), here / there));
                    }
                }
            }
        }
        return exchanges;
    }
}
