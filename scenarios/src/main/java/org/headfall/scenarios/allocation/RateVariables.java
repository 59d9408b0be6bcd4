package org.headfall.scenarios.allocation;

import java.util.BitSet;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;

/** Rates as variables, one a bore and group of blocks: where they change, and what they are on a day. */
final class RateVariables {

    private final RateBlocks blocks;
    private final int[] bores;
    private final TreeMap<Double, Change> changes = new TreeMap<>();

    /**
     * Groups that end and begin at a moment.
     *
     * @param ends the one that ends, -1 for none
     * @param begins the one that begins, -1 for none
     */
    record Change(int ends, int begins) {}

    /**
     * Variables.
     *
     * @param blocks when rates may differ
     * @param bores numbers of the bores whose rates are looked for
     */
    RateVariables(RateBlocks blocks, int[] bores) {
        this.blocks = blocks;
        this.bores = bores.clone();
        for (RateBlocks.Block block : blocks.blocks()) {
            changes.merge(block.start(), new Change(-1, block.group()), (a, b) -> new Change(a.ends(), b.begins()));
            changes.merge(block.end(), new Change(block.group(), -1), (a, b) -> new Change(b.ends(), a.begins()));
        }
    }

    RateBlocks blocks() {
        return blocks;
    }

    /** Number of variables, bore by bore. */
    int count() {
        return bores.length * blocks.groups();
    }

    /** Number of bores. */
    int bores() {
        return bores.length;
    }

    /** That the taking of all of them counts. */
    DrawdownByRates.Counted everyone() {
        BitSet all = new BitSet();
        all.set(0, bores.length);
        return new DrawdownByRates.Counted(all, Optional.empty());
    }

    /** Number of a bore in the run. */
    int station(int bore) {
        return bores[bore];
    }

    /** Numbers of the bores in the run. */
    int[] stations() {
        return bores.clone();
    }

    int variable(int bore, int group) {
        return bore * blocks.groups() + group;
    }

    /** Changes before a moment, by their moments (d). */
    Map<Double, Change> changesBefore(double day) {
        return changes.headMap(day, false);
    }

    /** All moments of changes, increasing (d). */
    double[] changeDays() {
        return changes.keySet().stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Rate of a bore from a change on; none between blocks. */
    double rateAfter(double[] rates, int bore, double changeDay) {
        int group = Objects.requireNonNull(changes.get(changeDay)).begins();
        return group < 0 ? 0 : rates[variable(bore, group)];
    }

    /** By how much the rate of a bore changes. */
    double step(double[] rates, int bore, Change change) {
        double now = change.begins() < 0 ? 0 : rates[variable(bore, change.begins())];
        double before = change.ends() < 0 ? 0 : rates[variable(bore, change.ends())];
        return now - before;
    }

    /** Rate of a bore at a moment; none between blocks. */
    double rate(double[] rates, int bore, double day) {
        RateBlocks.Block block = blocks.at(day);
        return block == null ? 0 : rates[variable(bore, block.group())];
    }

    /**
     * Effect of a unit of each variable of a bore, by that of a step on each day of change.
     *
     * @param bore the bore
     * @param before moment before which changes count (d)
     * @param steps effect of a unit that begins at a moment (d)
     * @param effects receives the effects, added to
     */
    void addSteps(int bore, double before, DoubleUnaryOperator steps, double[] effects) {
        for (Map.Entry<Double, Change> change : changesBefore(before).entrySet()) {
            double effect = steps.applyAsDouble(change.getKey());
            if (change.getValue().begins() >= 0) {
                effects[variable(bore, change.getValue().begins())] += effect;
            }
            if (change.getValue().ends() >= 0) {
                effects[variable(bore, change.getValue().ends())] -= effect;
            }
        }
    }
}
