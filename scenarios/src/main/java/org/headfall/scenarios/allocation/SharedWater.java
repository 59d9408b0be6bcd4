package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.headfall.solver.allocation.Optimum;
import org.headfall.solver.allocation.Programme;
import org.headfall.solver.allocation.Row;
import org.headfall.solver.allocation.Ties;

/**
 * The best rates under requirements. Of the thousands of rows, one a requirement and day, only those enter the programme
 * that its solutions have broken (Kelley 1960, J. SIAM 8, 703-712), and those that have long not mattered leave it; the
 * loss in a bore, convex in its rate, enters by tangents. Many rates are found from few: held equal over stretches of time
 * ({@link RateStretches}), which are made finer until that gains next to nothing. Rows hold whatever is held equal.
 */
final class SharedWater {

    private static final double TOLERANCE = 1e-4;

    /** Tolerance while stretches are still to be made finer. */
    private static final double ROUGH = 1e-3;

    private static final int MOST_ROUNDS = 200;

    /** Rounds for which a row that does not bind is kept. */
    private static final int PATIENCE = 8;

    /** Round from which on no row leaves, lest rows come and go for ever. */
    private static final int ALL_STAY = 100;

    /** Share of the goal that finer stretches have to gain. */
    private static final double WORTH_IT = 5e-3;

    private static final int PARTS_OF_TIME = 4;

    /** Rates for which a curved cost that is not what is wanted is worth its time: 0.2 s of CPU a solution, with 280 rates 4 s. */
    private static final int MOST_CURVED = 100;

    private final RateEffects effects;
    private final List<Requirement> requirements;
    private final List<Ties> levels;
    private final List<Cut> cuts = new ArrayList<>();

    /** Level of ties that was fine enough, by the name of what was wanted. */
    private final Map<String, Integer> settled = new HashMap<>();

    /** A requirement on a day, with the rate at which the loss touches its tangent. */
    private static final class Cut {
        private final int requirement;
        private final int day;
        private final double touching;

        /** Effect of a unit of each variable, without the loss, and what it leaves out at the rates it was found for. */
        private double[] coefficients;

        private double offset;
        private int idle;

        Cut(int requirement, int day, double touching) {
            this.requirement = requirement;
            this.day = day;
            this.touching = touching;
            coefficients = new double[0];
        }
    }

    /**
     * The best rates.
     *
     * @param rates rate of each variable (m³/d)
     * @param value of what was to be small
     */
    @SuppressWarnings("ArrayRecordComponent") // read once by whoever asked
    record Best(double[] rates, double value) {}

    /**
     * Requirements on rates.
     *
     * @param effects what rates do
     * @param levels ties of rates, from coarse to none
     * @param requirements what rates must keep
     */
    SharedWater(RateEffects effects, List<Ties> levels, List<Requirement> requirements) {
        this.effects = effects;
        this.levels = levels;
        this.requirements = requirements;
    }

    /**
     * The best rates that keep all requirements, which give way only where they contradict each other.
     *
     * @param name of what is wanted: the ties that were fine enough for it serve again when it is asked for again
     * @param programme what is wanted
     * @param fixed wishes that must be kept besides
     * @param relaxed receives by how much each requirement had to give way (0 where it did not)
     * @return the rates
     * @throws ContradictionException if the wishes alone cannot be kept
     */
    Best solve(String name, Programme programme, List<Wish> fixed, double[] relaxed) {
        int first = settled.getOrDefault(name, -1);
        if (first < 0) {
            first = fineEnough(programme, fixed, relaxed);
        }
        // Rates that were close enough to keeping all may not be at the final tolerance: then finer ties are needed.
        for (int level = first; level < levels.size(); level++) {
            Optional<Best> best = solve(levels.get(level), programme, fixed, relaxed, TOLERANCE);
            if (best.isPresent()) {
                settled.put(name, level);
                return best.get();
            }
        }
        throw new IllegalStateException("rates without ties neither kept all limits nor contradicted them");
    }

    /**
     * The best rates for something else of curved cost, with the ties that were fine enough and nothing that gives way more than it
     * has.
     *
     * @param name of what was solved for before
     * @param programme what is wanted now
     * @param fixed wishes that must be kept besides
     * @return the rates; absent if none keep all, or if there are more than {@value #MOST_CURVED} of them
     */
    Optional<Best> solveLike(String name, Programme programme, List<Wish> fixed) {
        Ties ties = levels.get(settled.getOrDefault(name, levels.size() - 1));
        return ties.count() > MOST_CURVED ? Optional.empty() : solve(ties, programme, fixed, TOLERANCE, () -> false);
    }

    /** The first level of ties than which the one before it gains next to nothing less. */
    private int fineEnough(Programme programme, List<Wish> fixed, double[] relaxed) {
        Optional<Best> found = Optional.empty();
        for (int level = 0; level < levels.size() - 1; level++) {
            Optional<Best> finer = solve(levels.get(level), programme, fixed, relaxed, ROUGH);
            if (finer.isPresent() && found.isPresent() && !isWorthIt(found.get(), finer.get())) {
                return level;
            }
            found = finer;
        }
        return levels.size() - 1;
    }

    private static boolean isWorthIt(Best coarse, Best fine) {
        return coarse.value() - fine.value() > WORTH_IT * Math.abs(fine.value());
    }

    /** The best rates with some ties; absent if only other ties, or none, keep all requirements. */
    private Optional<Best> solve(Ties ties, Programme programme, List<Wish> fixed, double[] relaxed, double tolerance) {
        return solve(ties, programme, fixed, tolerance, () -> {
            if (ties.areNone()) {
                relax(programme, fixed, relaxed);
            }
            return ties.areNone();
        });
    }

    /** The best rates with some ties; where rows contradict each other, something may have them do so no longer. */
    private Optional<Best> solve(
            Ties ties, Programme programme, List<Wish> fixed, double tolerance, BooleanSupplier contradicting) {
        Programme tied = ties.of(programme);
        BitSet pressing = new BitSet();
        for (int round = 0; round < MOST_ROUNDS; round++) {
            List<Row> rows = rows(fixed);
            Optional<Optimum> optimum =
                    tied.solve(rows.stream().map(ties::of).toList(), pressing).map(ties::free);
            if (optimum.isEmpty()) {
                if (!contradicting.getAsBoolean()) {
                    return Optional.empty();
                }
                continue;
            }
            Best best = new Best(optimum.get().x(), optimum.get().value());
            if (!cutOff(best.rates(), rows.subList(fixed.size(), rows.size()), tolerance, round < ALL_STAY)) {
                return Optional.of(best);
            }
        }
        throw new IllegalStateException("rates that keep all limits were not found in " + MOST_ROUNDS + " rounds");
    }

    /**
     * The best rates with even shares among bores that are as good as each other.
     *
     * @param programme what was wanted of the rates
     * @param fixed wishes that are kept besides
     * @param best the rates (m³/d)
     */
    EvenShares.Shares evened(Programme programme, List<Wish> fixed, double[] best) {
        return new EvenShares(effects.variables(), programme, rows(fixed), TOLERANCE, rates -> {
                    double[][] found = effects.of(rates, requirements);
                    for (int r = 0; r < found.length; r++) {
                        for (int k = 0; k < found[r].length; k++) {
                            if (requirements.get(r).base(k) - found[r][k] < -TOLERANCE) {
                                return false;
                            }
                        }
                    }
                    return true;
                })
                .of(best);
    }

    /**
     * What it costs to keep something: by how much what is to be small would fall for a unit more of each, not negative.
     *
     * @param ofRequirements of each requirement
     * @param ofWishes of each of the wishes that are kept besides, while the others stay
     */
    @SuppressWarnings("ArrayRecordComponent") // read once by whoever asked
    record Prices(double[] ofRequirements, double[] ofWishes) {}

    /**
     * What requirements and wishes cost at the solution last found.
     *
     * @param name of what is wanted, as it was solved for
     * @param programme what is wanted
     * @param fixed wishes that are kept besides
     * @return the prices
     */
    Prices prices(String name, Programme programme, List<Wish> fixed) {
        Ties ties = levels.get(settled.getOrDefault(name, levels.size() - 1));
        double[] prices =
                ties.of(programme).prices(rows(fixed).stream().map(ties::of).toList());
        double[] sums = new double[requirements.size()];
        for (int i = fixed.size(); i < prices.length; i++) {
            sums[cuts.get(i - fixed.size()).requirement] += prices[i];
        }
        return new Prices(sums, Arrays.copyOf(prices, fixed.size()));
    }

    private List<Row> rows(List<Wish> fixed) {
        return Stream.concat(fixed.stream().map(Wish::row), cuts.stream().map(this::row))
                .toList();
    }

    private Row row(Cut cut) {
        Requirement one = requirements.get(cut.requirement);
        double[] coefficients = cut.coefficients.clone();
        double bound = one.base(cut.day) - cut.offset + effects.addTangent(one, cut.day, cut.touching, coefficients);
        return new Row(coefficients, bound, one.mayGiveWay() ? one.metresOfUnit() : Double.POSITIVE_INFINITY);
    }

    /** What gave way before is taken back first: it may have given way for less than is known now. */
    private void relax(Programme programme, List<Wish> fixed, double[] relaxed) {
        for (int r = 0; r < relaxed.length; r++) {
            requirements.get(r).relax(-relaxed[r]);
            relaxed[r] = 0;
        }
        int[] together = new int[fixed.size() + cuts.size()];
        Arrays.setAll(together, i -> i < fixed.size() ? 0 : 1 + cuts.get(i - fixed.size()).requirement);
        double[] needed = programme.leastRelaxation(rows(fixed), together).orElse(new double[0]);
        if (Arrays.stream(needed).allMatch(amount -> amount == 0)) {
            throw contradiction(programme, fixed);
        }
        for (int i = 1; i < needed.length; i++) {
            if (needed[i] > 0) {
                relaxed[i - 1] = needed[i] + TOLERANCE;
                requirements.get(i - 1).relax(relaxed[i - 1]);
            }
        }
    }

    /** What is wanted besides the limits cannot be had with what the bores bring up: by how little it would have to give way. */
    private ContradictionException contradiction(Programme programme, List<Wish> fixed) {
        List<Row> rows = Stream.concat(
                        fixed.stream().map(Wish::givingWayByItsShare),
                        cuts.stream()
                                .filter(cut ->
                                        !requirements.get(cut.requirement).mayGiveWay())
                                .map(this::row))
                .toList();
        double[] amounts = programme.leastRelaxation(rows).orElse(new double[rows.size()]);
        List<ContradictionException.Wish> giveWay = new ArrayList<>();
        for (int i = 0; i < fixed.size(); i++) {
            if (amounts[i] > 0) {
                giveWay.add(fixed.get(i).givingWay(amounts[i]));
            }
        }
        return new ContradictionException(giveWay);
    }

    /** Adds, for each requirement that is broken, the days on which it is broken most in each part of the time. */
    private boolean cutOff(double[] rates, List<Row> rows, double tolerance, boolean someLeave) {
        List<Cut> broken = new ArrayList<>();
        double[][] found = effects.of(rates, requirements);
        for (int r = 0; r < found.length; r++) {
            for (int part = 0; part < PARTS_OF_TIME; part++) {
                int from = part * found[r].length / PARTS_OF_TIME;
                int worst = worst(requirements.get(r), found[r], from, (part + 1) * found[r].length / PARTS_OF_TIME);
                if (worst >= 0 && requirements.get(r).base(worst) - found[r][worst] < -tolerance) {
                    broken.add(cut(r, worst, rates, found[r][worst]));
                }
            }
        }
        for (int i = 0; i < rows.size(); i++) {
            Cut cut = cuts.get(i);
            cut.idle = rows.get(i).left(rates) < TOLERANCE ? 0 : cut.idle + 1;
        }
        if (someLeave && !broken.isEmpty()) {
            cuts.removeIf(cut -> cut.idle > PATIENCE);
        }
        cuts.addAll(broken);
        return !broken.isEmpty();
    }

    private static int worst(Requirement one, double[] effects, int from, int to) {
        int worst = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int k = from; k < to; k++) {
            double margin = one.base(k) - effects[k];
            if (margin < least) {
                least = margin;
                worst = k;
            }
        }
        return worst;
    }

    /**
     * Has the rows that are there follow effects that have changed.
     *
     * @param rates rates at which rows are to be exact (m³/d)
     * @param found effects of these rates on each requirement and day, losses included
     */
    void follow(double[] rates, double[][] found) {
        for (Cut cut : cuts) {
            measure(cut, rates, found[cut.requirement][cut.day]);
        }
    }

    private Cut cut(int requirement, int day, double[] rates, double found) {
        Requirement one = requirements.get(requirement);
        double touching = one.own()
                .map(own -> effects.variables().rate(rates, own.bore(), one.days()[day]))
                .orElse(0.0);
        Cut cut = new Cut(requirement, day, touching);
        measure(cut, rates, found);
        return cut;
    }

    /** Effects of rates and those of units are found in ways of their own, with errors of their own, where rates are answered. */
    private void measure(Cut cut, double[] rates, double found) {
        Requirement one = requirements.get(cut.requirement);
        cut.coefficients = effects.coefficients(one, cut.day);
        cut.offset = 0;
        if (effects.drawdown().isAnswered()) {
            cut.offset = found - effects.loss(one, rates, one.days()[cut.day]);
            for (int v = 0; v < rates.length; v++) {
                cut.offset -= cut.coefficients[v] * rates[v];
            }
        }
    }
}
