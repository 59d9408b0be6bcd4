package org.headfall.scenarios.allocation;

import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.solver.response.UnitResponses;

/** What rates do to requirements, by superposition of unit responses: one variable a bore and group of blocks. */
final class RateEffects {

    private final UnitResponses responses;
    private final RateBlocks blocks;
    private final int[] bores;
    private final TreeMap<Double, Change> changes = new TreeMap<>();

    /** Groups that end and begin at a moment, -1 for none. */
    private record Change(int ends, int begins) {}

    /** Bores that count, on a day. */
    private record CountedOn(BitSet counted, double day) {}

    /**
     * Effects.
     *
     * @param responses responses of all stations to all bores
     * @param blocks when rates may differ
     * @param bores numbers of the bores whose rates are looked for
     */
    RateEffects(UnitResponses responses, RateBlocks blocks, int[] bores) {
        this.responses = responses;
        this.blocks = blocks;
        this.bores = bores.clone();
        for (RateBlocks.Block block : blocks.blocks()) {
            changes.merge(block.start(), new Change(-1, block.group()), (a, b) -> new Change(a.ends(), b.begins()));
            changes.merge(block.end(), new Change(block.group(), -1), (a, b) -> new Change(b.ends(), a.begins()));
        }
    }

    /** Number of variables, bore by bore. */
    int variables() {
        return bores.length * blocks.groups();
    }

    int variable(int bore, int group) {
        return bore * blocks.groups() + group;
    }

    /** Rate of a bore at a moment; none between blocks. */
    double rate(double[] rates, int bore, double day) {
        RateBlocks.Block block = blocks.at(day);
        return block == null ? 0 : rates[variable(bore, block.group())];
    }

    /** Effect of rates on each requirement and day, losses included. */
    double[][] of(double[] rates, List<Requirement> requirements) {
        Map<CountedOn, double[]> known = new HashMap<>();
        double[][] effects = new double[requirements.size()][];
        for (int r = 0; r < effects.length; r++) {
            Requirement one = requirements.get(r);
            effects[r] = new double[one.days().length];
            for (int k = 0; k < effects[r].length; k++) {
                double day = one.days()[k];
                double effect = at(known, rates, one, day);
                if (one.declineYears() > 0) {
                    double before = day - one.declineYears() * RunCalendar.DAYS_PER_YEAR;
                    effect = (effect - (before > 0 ? at(known, rates, one, before) : 0)) / one.declineYears();
                }
                effects[r][k] = one.perMetre() * effect + loss(one, rates, day);
            }
        }
        return effects;
    }

    private double at(Map<CountedOn, double[]> known, double[] rates, Requirement one, double day) {
        return known.computeIfAbsent(new CountedOn(one.counted(), day), key -> drawdown(rates, one.counted(), day))[
                one.station()];
    }

    private double loss(Requirement one, double[] rates, double day) {
        return one.level()
                .map(level -> level.loss().at(rate(rates, level.bore(), day)))
                .orElse(0.0);
    }

    /** Drawdown at all stations by some of the bores. */
    private double[] drawdown(double[] rates, BitSet counted, double day) {
        double[] sum = new double[responses.receptors()];
        double[] amounts = new double[responses.causes()];
        for (Map.Entry<Double, Change> change : changes.headMap(day, false).entrySet()) {
            boolean any = false;
            for (int b = 0; b < bores.length; b++) {
                amounts[bores[b]] = counted.get(b) ? change(rates, b, change.getValue()) : 0;
                any |= amounts[bores[b]] != 0;
            }
            if (any) {
                responses.table().addSteps(day - change.getKey(), amounts, sum);
            }
        }
        return sum;
    }

    private double change(double[] rates, int bore, Change change) {
        double now = change.begins() < 0 ? 0 : rates[variable(bore, change.begins())];
        double before = change.ends() < 0 ? 0 : rates[variable(bore, change.ends())];
        return now - before;
    }

    /** Effect of a unit of each variable on a requirement on one of its days, without losses. */
    double[] coefficients(Requirement one, int k) {
        double day = one.days()[k];
        double[] now = response(one.station(), day, one.counted());
        if (one.declineYears() > 0) {
            double earlier = day - one.declineYears() * RunCalendar.DAYS_PER_YEAR;
            double[] before = earlier > 0 ? response(one.station(), earlier, one.counted()) : new double[now.length];
            Arrays.setAll(now, v -> (now[v] - before[v]) / one.declineYears());
        }
        Arrays.setAll(now, v -> one.perMetre() * now[v]);
        return now;
    }

    /** Drawdown at a station on a day by a unit of each variable. */
    double[] response(int station, double day, BitSet counted) {
        double[] coefficients = new double[variables()];
        for (Map.Entry<Double, Change> change : changes.headMap(day, false).entrySet()) {
            double time = day - change.getKey();
            for (int b = counted.nextSetBit(0); b >= 0; b = counted.nextSetBit(b + 1)) {
                double response = responses.at(station, bores[b], time);
                if (change.getValue().begins() >= 0) {
                    coefficients[variable(b, change.getValue().begins())] += response;
                }
                if (change.getValue().ends() >= 0) {
                    coefficients[variable(b, change.getValue().ends())] -= response;
                }
            }
        }
        return coefficients;
    }

    /**
     * Puts the tangent to the loss in a bore, which touches it at some rate, on the left and right of a row.
     *
     * @param one a requirement
     * @param k number of the day of the row
     * @param touching the rate (m³/d)
     * @param coefficients left side of the row, changed
     * @return what the bound has to grow by
     */
    double addTangent(Requirement one, int k, double touching, double[] coefficients) {
        RateBlocks.Block block = blocks.at(one.days()[k]);
        if (one.level().isEmpty() || block == null) {
            return 0;
        }
        Requirement.OfLevel level = one.level().get();
        double slope = level.loss().slope(touching);
        coefficients[variable(level.bore(), block.group())] += slope;
        return slope * touching - level.loss().at(touching);
    }
}
