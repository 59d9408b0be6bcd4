package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.solver.allocation.Optimum;
import org.headfall.solver.allocation.Programme;
import org.headfall.solver.allocation.Row;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.response.UnitResponses;

/**
 * Requirements on the rates of some bores, linear by unit responses. Of the thousands of rows, one a requirement and day,
 * only those enter the programme that its solutions have broken (Kelley 1960, J. SIAM 8, 703-712); the loss in a bore,
 * convex in its rate, enters by tangents.
 */
final class SharedWater {

    private static final double TOLERANCE = 1e-4;
    private static final int MOST_ROUNDS = 80;

    private final UnitResponses responses;
    private final RateBlocks blocks;
    private final int[] bores;
    private final List<Requirement> requirements;
    private final List<Cut> cuts = new ArrayList<>();
    private final TreeMap<Double, Change> changes = new TreeMap<>();

    /** Groups that end and begin at a moment, -1 for none. */
    private record Change(int ends, int begins) {}

    /** A requirement on a day, with the rate at which the loss touches its tangent. */
    @SuppressWarnings("ArrayRecordComponent") // a long row, shared and never compared
    private record Cut(int requirement, int day, double touching, double[] coefficients) {}

    /**
     * Requirements on rates.
     *
     * @param responses responses of all stations to all bores
     * @param blocks when rates may differ
     * @param bores numbers of the bores whose rates are looked for
     * @param requirements what they must keep
     */
    SharedWater(UnitResponses responses, RateBlocks blocks, int[] bores, List<Requirement> requirements) {
        this.responses = responses;
        this.blocks = blocks;
        this.bores = bores.clone();
        this.requirements = requirements;
        for (RateBlocks.Block block : blocks.blocks()) {
            changes.merge(block.start(), new Change(-1, block.group()), (a, b) -> new Change(a.ends(), b.begins()));
            changes.merge(block.end(), new Change(block.group(), -1), (a, b) -> new Change(b.ends(), a.begins()));
        }
    }

    /** Number of variables: one a bore and group, bore by bore. */
    int variables() {
        return bores.length * blocks.groups();
    }

    int variable(int bore, int group) {
        return bore * blocks.groups() + group;
    }

    RateBlocks blocks() {
        return blocks;
    }

    /** Drawdown at all stations by some of the bores. */
    private double[] drawdown(double[] rates, boolean[] counted, double day) {
        double[] sum = new double[responses.receptors()];
        double[] amounts = new double[responses.causes()];
        for (Map.Entry<Double, Change> change : changes.headMap(day, false).entrySet()) {
            for (int b = 0; b < bores.length; b++) {
                amounts[bores[b]] = counted[b] ? change(rates, b, change.getValue()) : 0;
            }
            responses.table().addSteps(day - change.getKey(), amounts, sum);
        }
        return sum;
    }

    private double change(double[] rates, int bore, Change change) {
        double now = change.begins() < 0 ? 0 : rates[variable(bore, change.begins())];
        double before = change.ends() < 0 ? 0 : rates[variable(bore, change.ends())];
        return now - before;
    }

    /** Effect of rates on each requirement and day, losses included. */
    double[][] effects(double[] rates) {
        Map<String, double[]> known = new LinkedHashMap<>();
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

    private double at(Map<String, double[]> known, double[] rates, Requirement one, double day) {
        return known.computeIfAbsent(Arrays.toString(one.counted()) + day, key -> drawdown(rates, one.counted(), day))[
                one.station()];
    }

    private double loss(Requirement one, double[] rates, double day) {
        return one.level()
                .map(level -> level.loss().at(rate(rates, level.bore(), day)))
                .orElse(0.0);
    }

    /** Rate of a bore at a moment. */
    double rate(double[] rates, int bore, double day) {
        RateBlocks.Block block = blocks.at(day);
        return block == null ? 0 : rates[variable(bore, block.group())];
    }

    /** Drawdown at a station on a day by a unit of each variable. */
    double[] response(int station, double day, boolean[] counted) {
        double[] coefficients = new double[variables()];
        for (Map.Entry<Double, Change> change : changes.headMap(day, false).entrySet()) {
            double time = day - change.getKey();
            for (int b = 0; b < bores.length; b++) {
                if (counted[b]) {
                    double response = responses.at(station, bores[b], time);
                    if (change.getValue().begins() >= 0) {
                        coefficients[variable(b, change.getValue().begins())] += response;
                    }
                    if (change.getValue().ends() >= 0) {
                        coefficients[variable(b, change.getValue().ends())] -= response;
                    }
                }
            }
        }
        return coefficients;
    }

    private double[] coefficients(Requirement one, int k) {
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

    /**
     * The best rates that keep all requirements, which give way only where they contradict each other.
     *
     * @param programme what is wanted
     * @param fixed rows that must be kept besides
     * @param relaxed receives by how much each requirement had to give way (0 where it did not)
     * @return the rates
     * @throws ContradictionException if the fixed rows alone cannot be kept
     */
    Optimum solve(Programme programme, List<Row> fixed, double[] relaxed) {
        for (int round = 0; round < MOST_ROUNDS; round++) {
            List<Row> rows = new ArrayList<>(fixed);
            for (int i = 0; i < cuts.size(); i++) {
                rows.add(row(i));
            }
            Optional<Optimum> optimum = programme.solve(rows);
            if (optimum.isEmpty()) {
                relax(programme, rows, relaxed);
                continue;
            }
            if (!cutOff(optimum.get().x())) {
                return optimum.get();
            }
        }
        throw new IllegalStateException("rates that keep all limits were not found in " + MOST_ROUNDS + " rounds");
    }

    private Row row(int index) {
        Cut cut = cuts.get(index);
        Requirement one = requirements.get(cut.requirement());
        double[] coefficients = cut.coefficients().clone();
        double bound = one.base(cut.day());
        if (one.level().isPresent()) {
            WellLoss loss = one.level().get().loss();
            RateBlocks.Block block = blocks.at(one.days()[cut.day()]);
            if (block != null) {
                double slope = loss.slope(cut.touching());
                coefficients[variable(one.level().get().bore(), block.group())] += slope;
                bound += slope * cut.touching() - loss.at(cut.touching());
            }
        }
        return new Row(cut.requirement() + "/" + index, coefficients, bound, 1);
    }

    private void relax(Programme programme, List<Row> rows, double[] relaxed) {
        Map<String, Double> needed = programme.leastRelaxation(rows).orElse(Map.of());
        if (needed.isEmpty()) {
            throw contradiction(programme, rows);
        }
        double[] most = new double[relaxed.length];
        needed.forEach((name, amount) -> {
            int requirement = requirementOf(name);
            most[requirement] = Math.max(most[requirement], amount);
        });
        for (int r = 0; r < most.length; r++) {
            if (most[r] > 0) {
                double more = most[r] + TOLERANCE;
                requirements.get(r).relax(more);
                relaxed[r] += more;
            }
        }
    }

    /** What is wanted besides the limits cannot be had: by how little it would have to give way. */
    private static ContradictionException contradiction(Programme programme, List<Row> rows) {
        Map<String, Row> wishes = new LinkedHashMap<>();
        rows.stream()
                .filter(row -> !Double.isFinite(row.givesWay()))
                .forEach(row -> wishes.put(row.name(), new Row(row.name(), row.coefficients(), row.bound(), 1)));
        Map<String, Double> giveWay =
                programme.leastRelaxation(List.copyOf(wishes.values())).orElse(Map.of());
        return new ContradictionException(giveWay.entrySet().stream()
                .map(entry ->
                        AllocationWishes.wish(Objects.requireNonNull(wishes.get(entry.getKey())), entry.getValue()))
                .toList());
    }

    static int requirementOf(String rowName) {
        int slash = rowName.indexOf('/');
        return slash < 0 ? -1 : Integer.parseInt(rowName.substring(0, slash));
    }

    /** Adds, for each requirement that is broken, the days on which it is broken most in each part of the time. */
    private boolean cutOff(double[] rates) {
        double[][] effects = effects(rates);
        boolean any = false;
        for (int r = 0; r < effects.length; r++) {
            Requirement one = requirements.get(r);
            int parts = 4;
            for (int part = 0; part < parts; part++) {
                int worst = -1;
                double least = -TOLERANCE;
                for (int k = part * effects[r].length / parts; k < (part + 1) * effects[r].length / parts; k++) {
                    double margin = one.base(k) - effects[r][k];
                    if (margin < least) {
                        least = margin;
                        worst = k;
                    }
                }
                if (worst >= 0) {
                    double touching = one.level().isPresent()
                            ? rate(rates, one.level().get().bore(), one.days()[worst])
                            : 0;
                    cuts.add(new Cut(r, worst, touching, coefficients(one, worst)));
                    any = true;
                }
            }
        }
        return any;
    }
}
