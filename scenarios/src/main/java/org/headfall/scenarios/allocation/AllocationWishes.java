package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.quantity.LiftEnergy;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.scenario.AllocationSpecification;
import org.headfall.scenarios.scenario.AllocationSpecification.Goal;
import org.headfall.scenarios.scenario.StatedRate;
import org.headfall.solver.allocation.Programme;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.WaterColumn;
import org.headfall.solver.bore.WellLoss;

/** What is wanted of an allocation, as programmes and rows over the rates of bores and groups of blocks. */
final class AllocationWishes {

    private final RunDescription run;
    private final AllocationSpecification wanted;
    private final RateBlocks blocks;
    private final int[] bores;
    private final double[] moments;
    private final double[] broughtUp;
    private final RateEffects effects;

    /** All that is lost on the way into each bore, as its level in a run counts it. */
    private final WellLoss[] losses;

    /** Water that fills each bore. */
    private final WaterColumn[] columns;

    /** Head at the wall of each bore on each of the moments if none took anything, as the effects add to it (m above datum). */
    private final double[][] restingHead;

    /** Rates around which losses are made quadratic (m³/d); none before any were run. */
    private double[] around = {};

    /** What lifting takes, if energy is the goal, by what rates do near those last followed. */
    private Optional<LiftedWater> lifted;

    /**
     * Wishes.
     *
     * @param plan the plan of the document
     * @param wanted what is wanted
     * @param blocks blocks of time and their groups
     * @param bores the bores that share, by their place in the run
     * @param moments a day of each block on which levels are looked at (d)
     * @param broughtUp most that each bore can ever bring up in each group, bore by bore (m³/d)
     * @param without the run without these bores
     * @param effects the variables, and what they do
     */
    AllocationWishes(
            RunPlan plan,
            AllocationSpecification wanted,
            RateBlocks blocks,
            int[] bores,
            double[] moments,
            double[] broughtUp,
            RunInMemory without,
            RateEffects effects) {
        this.wanted = wanted;
        this.blocks = blocks;
        this.bores = bores.clone();
        this.moments = moments.clone();
        this.broughtUp = broughtUp.clone();
        this.effects = effects;
        run = plan.description();
        losses = new WellLoss[bores.length];
        columns = new WaterColumn[bores.length];
        for (int b = 0; b < bores.length; b++) {
            Bore bore = plan.problem().bores().get(bores[b]);
            losses[b] = plan.problem().lossIn(bore);
            columns[b] = bore.column();
        }
        restingHead = heads(without);
        lifted = lifted();
    }

    private double[][] heads(RunInMemory of) {
        double[][] heads = new double[bores.length][moments.length];
        for (int b = 0; b < bores.length; b++) {
            for (int k = 0; k < moments.length; k++) {
                heads[b][k] = of.recording().series().get(bores[b]).headAt(moments[k]);
            }
        }
        return heads;
    }

    /**
     * Has the goal follow a run: energy becomes exact, with its first derivatives, at its rates. Other goals have nothing to
     * follow.
     *
     * @param with the run
     * @param rates its rates (m³/d)
     */
    void follow(RunInMemory with, double[] rates) {
        if (wanted.goal() != Goal.LEAST_ENERGY) {
            return;
        }
        double[][] heads = heads(with);
        double[][] drawdown = effects.drawdown()
                .on(rates, effects.variables().everyone(), moments)
                .drawdown();
        for (int b = 0; b < bores.length; b++) {
            for (int k = 0; k < moments.length; k++) {
                restingHead[b][k] = heads[b][k] + drawdown[k][bores[b]];
            }
        }
        around = rates.clone();
        lifted = lifted();
    }

    /** Minimums of holders and the total, which hold whatever the goal. */
    List<Wish> all() {
        List<Wish> all = new ArrayList<>(holderMinimums());
        wanted.total().ifPresent(total -> all.add(ofTotal(total)));
        return all;
    }

    /** The programme of the largest yield of one holder's bores. */
    Programme largestYieldOf(String holder) {
        return Programme.linear(most(), negative(yieldOf(holder)));
    }

    /** That the negative of a holder's yield, as the programme states it, is at most a value. */
    Wish atLeast(String holder, double negativeYield) {
        return Wish.of("yield of " + holder, negative(yieldOf(holder)), negativeYield, "ML/yr", 1);
    }

    private String holder(int bore) {
        return run.bores().get(bores[bore]).holder();
    }

    /** Unit in which the goal is stated. */
    String goalUnit() {
        return switch (wanted.goal()) {
            case LARGEST_YIELD -> "ML/yr";
            case LEAST_EFFECT_ON_SPRINGS -> "m at the springs";
            case LEAST_ENERGY -> "MWh/yr";
        };
    }

    /** The programme of the goal. */
    Programme goal() {
        return switch (wanted.goal()) {
            case LARGEST_YIELD -> Programme.linear(most(), negative(yieldOf("")));
            case LEAST_EFFECT_ON_SPRINGS -> Programme.linear(most(), onSprings());
            case LEAST_ENERGY -> energy();
        };
    }

    /** Largest rate of each variable (m³/d). */
    double[] most() {
        double[] most = new double[effects.variables().count()];
        Arrays.setAll(most, v -> Math.min(wanted.largestRate(), broughtUp[v]));
        return most;
    }

    private static double[] negative(double[] values) {
        return Arrays.stream(values).map(value -> -value).toArray();
    }

    /** Mean taking (ML/yr) by a unit of each variable, of one holder's bores or, for an empty name, of all. */
    private double[] yieldOf(String holder) {
        double[] yield = new double[effects.variables().count()];
        for (int b = 0; b < bores.length; b++) {
            if (holder.isEmpty() || holder.equals(holder(b))) {
                for (int group = 0; group < blocks.groups(); group++) {
                    yield[effects.variables().variable(b, group)] =
                            DischargeUnit.MEGALITRES_PER_YEAR.of(blocks.days(group) / wanted.days());
                }
            }
        }
        return yield;
    }

    private Wish ofTotal(StatedRate total) {
        double megalitres = DischargeUnit.MEGALITRES_PER_YEAR.of(total.value());
        double ofOne = DischargeUnit.MEGALITRES_PER_YEAR.per(total.ofOne());
        return wanted.goal() == Goal.LARGEST_YIELD
                ? Wish.of("total at most", yieldOf(""), megalitres, total.unit(), ofOne)
                : Wish.of("total at least", negative(yieldOf("")), -megalitres, total.unit(), ofOne);
    }

    private List<Wish> holderMinimums() {
        List<Wish> minimums = new ArrayList<>();
        for (AllocationSpecification.HolderMinimum minimum : wanted.minimums()) {
            for (int group = 0; group < blocks.groups(); group++) {
                double[] coefficients = new double[effects.variables().count()];
                for (int b = 0; b < bores.length; b++) {
                    if (holder(b).equals(minimum.holder())) {
                        coefficients[effects.variables().variable(b, group)] = -1;
                    }
                }
                minimums.add(Wish.of(
                        "minimum of " + minimum.holder() + " from "
                                + run.calendar().at(blocks.startOf(group)).toLocalDate() + " on",
                        coefficients,
                        -minimum.rate().value(),
                        minimum.rate().unit(),
                        minimum.rate().ofOne()));
            }
        }
        return minimums;
    }

    /**
     * Drawdown at the springs, on average, that the mean taking of each variable would have caused by the end if it had
     * been steady (m). When water is taken does not count, else taking late would seem to do no harm.
     */
    private double[] onSprings() {
        double[] sum = new double[effects.variables().count()];
        for (Station.SpringSite spring : run.springs()) {
            int station = run.stationIndex(spring.name());
            double[] response = effects.drawdown().bySteady(station, wanted.days());
            for (int b = 0; b < bores.length; b++) {
                for (int group = 0; group < blocks.groups(); group++) {
                    sum[effects.variables().variable(b, group)] += response[b]
                            * blocks.days(group)
                            / wanted.days()
                            / run.springs().size();
                }
            }
        }
        return sum;
    }

    /** Energy (MWh/yr), for water that stands above its delivery level as if the surplus were gained. */
    private Programme energy() {
        double[] least = new double[bores.length];
        Arrays.setAll(least, this::lossSlope);
        double[] slopes = new double[effects.variables().count()];
        Arrays.setAll(slopes, v -> least[v / blocks.groups()]);
        return lifted.orElseThrow().withSurplusGained(most(), around, slopes);
    }

    /**
     * Energy (MWh/yr) by lift at the end of each block: what is there without the bores, and what they add themselves. A bore of
     * density ratio r lifts from its level to the delivery level by {@code (needed head - head at the wall + loss) / r}, where
     * the needed head carries its water, perhaps hot, to the delivery level.
     */
    private Optional<LiftedWater> lifted() {
        if (wanted.goal() != Goal.LEAST_ENERGY) {
            return Optional.empty();
        }
        LiftedWater all = new LiftedWater(effects.variables().count());
        double perVolume = LiftEnergy.perMegalitre(1, wanted.efficiency()) * 1e-6 * 365.25 / wanted.days();
        for (int k = 0; k < moments.length; k++) {
            RateBlocks.Block block = blocks.blocks().get(k);
            for (int b = 0; b < bores.length; b++) {
                all.add(new LiftedWater.Term(
                        effects.variables().variable(b, block.group()),
                        perVolume * block.days() / columns[b].densityRatio(),
                        columns[b].head(delivery(b)) - restingHead[b][k],
                        effects.drawdown().by(bores[b], effects.variables().everyone(), moments[k]),
                        losses[b]));
            }
        }
        return Optional.of(all);
    }

    /** What lifting takes, if energy is the goal, by what rates do near those last followed. */
    Optional<LiftedWater> energyOfLifting() {
        return lifted;
    }

    /** Level to which the water of a bore is lifted (m above datum). */
    double delivery(int bore) {
        return run.stations().get(bores[bore]).groundLevel() + wanted.deliveryHead();
    }

    /** Loss per discharge at the mean wanted rate of a bore (d/m²). */
    private double lossSlope(int bore) {
        double mean = wanted.total().map(StatedRate::value).orElse(0.0) / bores.length;
        return mean > 0 ? losses[bore].at(mean) / mean : 0;
    }
}
