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
import org.headfall.solver.allocation.UnsolvedException;

/**
 * The best rates under requirements, of which only those enter the programme that matter ({@link Cuts}). Many rates are found from few: held equal over stretches of time
 * ({@link RateStretches}), which are made finer until that gains next to nothing. Rows hold whatever is held equal.
 */
final class SharedWater {

    private static final double TOLERANCE = 1e-4;

    /** Tolerance while stretches are still to be made finer. */
    private static final double ROUGH = 1e-3;

    private static final int MOST_ROUNDS = 200;

    /** Round from which on no row leaves, lest rows come and go for ever. */
    private static final int ALL_STAY = 100;

    /** Share of the goal that finer stretches have to gain. */
    private static final double WORTH_IT = 5e-3;

    /** Rates for which a curved cost that is not what is wanted is worth its time: 0.2 s of CPU a solution, with 280 rates 4 s. */
    private static final int MOST_CURVED = 100;

    private final RateEffects effects;
    private final List<Requirement> requirements;
    private final List<Ties> levels;
    private final Cuts cuts;

    /** Level of ties that was fine enough, by the name of what was wanted. */
    private final Map<String, Integer> settled = new HashMap<>();

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
        cuts = new Cuts(effects, requirements, TOLERANCE);
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
     * @return the rates; absent if none keep all, if the solver does not find them, or if there are more than
     *     {@value #MOST_CURVED} of them
     */
    Optional<Best> solveLike(String name, Programme programme, List<Wish> fixed) {
        Ties ties = tiesOf(name);
        if (ties.count() > MOST_CURVED) {
            return Optional.empty();
        }
        try {
            return solve(ties, programme, fixed, TOLERANCE, () -> false);
        } catch (UnsolvedException unsolved) {
            return Optional.empty();
        }
    }

    /** Ties that were fine enough for what was wanted; none if it was never solved for. */
    private Ties tiesOf(String name) {
        return levels.get(settled.getOrDefault(name, levels.size() - 1));
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
            if (!cuts.cutOff(best.rates(), rows.subList(fixed.size(), rows.size()), tolerance, round < ALL_STAY)) {
                return Optional.of(best);
            }
        }
        throw new UnsolvedException("rates that keep all limits were not found in " + MOST_ROUNDS + " rounds");
    }

    /**
     * The best rates with even shares among bores that are as good as each other.
     *
     * @param programme what was wanted of the rates
     * @param fixed wishes that are kept besides
     * @param best the rates (m³/d)
     */
    EvenShares.Shares evened(Programme programme, List<Wish> fixed, double[] best) {
        return new EvenShares(effects.variables(), programme, rows(fixed), TOLERANCE, cuts::areNoneFor).of(best);
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
        Ties ties = tiesOf(name);
        double[] prices =
                ties.of(programme).prices(rows(fixed).stream().map(ties::of).toList());
        double[] sums = new double[requirements.size()];
        for (int i = fixed.size(); i < prices.length; i++) {
            sums[cuts.requirement(i - fixed.size())] += prices[i];
        }
        return new Prices(sums, Arrays.copyOf(prices, fixed.size()));
    }

    private List<Row> rows(List<Wish> fixed) {
        return Stream.concat(fixed.stream().map(Wish::row), cuts.rows().stream())
                .toList();
    }

    /** What gave way before is taken back first: it may have given way for less than is known now. */
    private void relax(Programme programme, List<Wish> fixed, double[] relaxed) {
        for (int r = 0; r < relaxed.length; r++) {
            requirements.get(r).relax(-relaxed[r]);
            relaxed[r] = 0;
        }
        List<Row> rows = rows(fixed);
        int[] together = new int[rows.size()];
        Arrays.setAll(together, i -> i < fixed.size() ? 0 : 1 + cuts.requirement(i - fixed.size()));
        double[] needed = programme.leastRelaxation(rows, together).orElse(new double[0]);
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
                        cuts.rows().stream().filter(row -> Double.isInfinite(row.givesWay())))
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

    /**
     * Has the rows that are there follow effects that have changed.
     *
     * @param rates rates at which rows are to be exact (m³/d)
     * @param found effects of these rates on each requirement and day, losses included
     */
    void follow(double[] rates, double[][] found) {
        cuts.follow(rates, found);
    }
}
