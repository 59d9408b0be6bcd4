package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.run.CasePlan;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunProgress;
import org.headfall.scenarios.scenario.AllocationSpecification;
import org.headfall.scenarios.scenario.AllocationSpecification.Goal;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.solver.allocation.Programme;
import org.headfall.solver.response.HeadAnswers;
import org.headfall.solver.response.StationResponses;

/** Finds the rates of an allocation. Use one object a search. */
public final class AllocationSearch {

    /** Moments on which levels are looked at lie this long before a rate changes (d). */
    private static final double BEFORE_CHANGE = 0.5;

    /** Rounds by superposition and simulator, and by the simulator alone after that. */
    private static final int MOST_ROUNDS = 10;

    /** Change of the goal from one round to the next at which rates have settled. */
    private static final double SETTLED = 5e-4;

    /** A change of the goal that counts as none, where nothing can be taken or need be lifted (m³/d, MWh/yr or m). */
    private static final double NO_CHANGE = 1e-6;

    private static final String GOAL = "goal";

    private final AllocationSpecification wanted;
    private final int mostRounds;
    private final RateBlocks blocks;
    private final RunsOfRates runs;
    private final Requirements requirements;
    private final RateEffects effects;
    private final SharedWater water;
    private final AllocationWishes wishes;
    private final AllocationFindings findings;
    private final RunProgress progress;

    /** What is wanted, by what rates do near those last run. */
    private Programme goal;

    /** Bores that share evenly in the rates last found. */
    private List<List<Integer>> evenly = List.of();

    private ServedInTurn served;

    private AllocationSearch(
            RunPlan plan,
            List<CasePlan> cases,
            Scenario scenario,
            PlanningResponses responses,
            RunProgress progress,
            int mostRounds) {
        this.progress = progress;
        this.mostRounds = mostRounds;
        wanted = scenario.planning().allocation().orElseThrow();
        RunDescription run = plan.description();
        blocks = RateBlocks.of(wanted, run.calendar());
        int[] bores = wanted.bores().stream().mapToInt(run::stationIndex).toArray();
        RatesInPlan rates = new RatesInPlan(plan, blocks, bores);
        double[] moments = blocks.blocks().stream()
                .mapToDouble(block -> Math.max(block.start() + BEFORE_CHANGE / 2, block.end() - BEFORE_CHANGE))
                .toArray();
        double[] watched = rates.watchedDays(moments);
        Optional<StationResponses> superposable = responses.withHeadsOrComputed(plan, progress);
        runs = new RunsOfRates(
                rates,
                watched,
                superposable,
                superposable.map(StationResponses::responses).orElseGet(() -> responses.orComputed(plan, progress)),
                RestingCases.of(plan, cases, bores, watched, superposable, progress),
                progress);
        RunInMemory without = runs.resting(bores.length * blocks.groups());
        RateVariables variables = new RateVariables(blocks, bores);
        requirements = Requirements.of(plan, scenario, variables, without);
        effects = new RateEffects(variables, new AquiferDrawdown(without.responses(), variables));
        water = new SharedWater(
                effects,
                RateStretches.of(
                        blocks,
                        bores.length,
                        requirements.turns(without.recording().days()[1], run.endDay())),
                requirements.all());
        wishes = new AllocationWishes(plan, wanted, blocks, bores, moments, requirements.most(), without, effects);
        goal = wishes.goal();
        served = new ServedInTurn(water, List.of());
        findings = new AllocationFindings(run, wanted, blocks, bores, moments, effects, wishes);
    }

    /**
     * Searches.
     *
     * @param plan the plan of the document
     * @param cases the plans of its cases, of which those that limits compare with and in which the bores that share rest are
     *     run; limits beside others are not kept
     * @param scenario the document, with an allocation
     * @param responses unit responses, if an earlier run has left any
     * @param progress is told how far the search has come
     * @return the rates
     * @throws ContradictionException if what is wanted cannot be had though all limits gave way
     */
    public static AllocationResult in(
            RunPlan plan, List<CasePlan> cases, Scenario scenario, PlanningResponses responses, RunProgress progress) {
        return in(plan, cases, scenario, responses, progress, MOST_ROUNDS);
    }

    /** The same with a bound of its own on rounds. */
    static AllocationResult in(
            RunPlan plan,
            List<CasePlan> cases,
            Scenario scenario,
            PlanningResponses responses,
            RunProgress progress,
            int mostRounds) {
        return new AllocationSearch(plan, cases, scenario, responses, progress, mostRounds).search();
    }

    private AllocationResult search() {
        double[] relaxed = new double[requirements.all().size()];
        SharedWater.Best best = even(best(relaxed));
        RunInMemory with = runs.with(best.rates());
        double before = Double.NaN;
        // Springs and rules make effects smaller or larger than superposed; what they do at these rates counts next.
        while (runs.count() < mostRounds && !(isKept(with, relaxed) && isSettled(before, best.value()))) {
            before = best.value();
            learn(with, best.rates(), relaxed);
            best = even(best(relaxed));
            with = runs.with(best.rates());
        }
        List<AllocationResult.Difference> differences = List.of();
        if (runs.bySimulator() == 0) {
            RunInMemory superposed = with;
            with = runs.simulated(best.rates());
            // What superposition is off by from the simulator counts as well.
            while (isKept(with, relaxed)
                    ? runs.count() < mostRounds && !isSettled(before, best.value())
                    : runs.bySimulator() < mostRounds) {
                before = best.value();
                learn(with, best.rates(), relaxed);
                best = even(best(relaxed));
                with = runs.simulated(best.rates());
            }
            differences = differences(
                    runs.bySimulator() == 1 ? Optional.of(superposed) : runs.superposed(best.rates()), with);
        }
        progress.reached("asking what limits cost", 0);
        return findings.of(
                best,
                evenly,
                with,
                drawdownIn(with),
                relaxed,
                requirements,
                kept(best, with, relaxed),
                new AllocationResult.Rounds(
                        runs.bySuperposition(),
                        runs.bySimulator(),
                        isSettled(before, best.value()),
                        requirements.notKept(with, relaxed),
                        differences));
    }

    /** How far superposition lies from the simulator at the rates that were chosen; nothing where it cannot say. */
    private List<AllocationResult.Difference> differences(Optional<RunInMemory> superposed, RunInMemory simulated) {
        return superposed.map(one -> requirements.differences(one, simulated)).orElse(List.of());
    }

    private boolean isKept(RunInMemory with, double[] relaxed) {
        return requirements.notKept(with, relaxed).isEmpty();
    }

    private static boolean isSettled(double before, double now) {
        return Math.abs(now - before) <= Math.max(NO_CHANGE, SETTLED * Math.abs(before));
    }

    /**
     * Has effects follow a run: they become those of small changes of its rates, with what springs and bores that follow head
     * give back, and what is left without the bores is set so that they give what the run found. What gave way is taken
     * back: whether limits contradict each other is judged anew, as springs and free-flowing bores give back a part.
     */
    private void learn(RunInMemory with, double[] found, double[] relaxed) {
        DrawdownByRates drawdown = drawdownIn(with);
        boolean changed = drawdown.isAnswered() || effects.drawdown().isAnswered();
        effects.follow(drawdown);
        double[][] bases = requirements.safeMargins(with);
        double[][] superposed = effects.of(found, requirements.all());
        if (changed) {
            water.follow(found, superposed);
        }
        // Losses in bores bend the energy whether or not anything answers.
        wishes.follow(with, found);
        goal = wishes.goal();
        for (int r = 0; r < bases.length; r++) {
            for (int k = 0; k < bases[r].length; k++) {
                bases[r][k] += superposed[r][k];
            }
        }
        Arrays.fill(relaxed, 0);
        requirements.setBases(bases);
    }

    /** What rates do near those of a run. */
    private DrawdownByRates drawdownIn(RunInMemory with) {
        HeadAnswers answers = with.answers();
        return answers.areNone()
                ? new AquiferDrawdown(with.responses(), effects.variables())
                : new AnsweredDrawdown(with, answers, effects.variables());
    }

    private SharedWater.Best best(double[] relaxed) {
        progress.reached("finding rates", 0);
        served = new ServedInTurn(water, wishes.all());
        for (String holder : wanted.seniority()) {
            served.serve(
                    "yield of " + holder,
                    wishes.largestYieldOf(holder),
                    value -> wishes.atLeast(holder, value),
                    relaxed);
        }
        SharedWater.Best best = served.last(GOAL, goal, relaxed);
        return wishes.energyOfLifting()
                .map(lifted -> leastLifting(lifted, best.rates(), relaxed))
                .orElse(best);
    }

    /** Valued by energy itself whichever programme found it: values are compared with each other. */
    private SharedWater.Best leastLifting(LiftedWater lifted, double[] found, double[] relaxed) {
        return lifted.anyStandsAbove(found)
                ? new LeastLifting(lifted, wishes.most(), served).from(found, relaxed)
                : new SharedWater.Best(found, lifted.energy(found));
    }

    /** The same with even schedules and even shares among bores where these make no difference. */
    private SharedWater.Best even(SharedWater.Best best) {
        double[] schedules = wanted.goal() == Goal.LEAST_ENERGY || blocks.groups() == 1
                ? best.rates()
                : new EvenSchedules(water, effects.variables())
                        .of(GOAL, served.wanted(), served.wishes(), best.rates());
        EvenShares.Shares shares = water.evened(served.wanted(), served.wishes(), schedules);
        evenly = shares.among();
        return new SharedWater.Best(shares.rates(), best.value());
    }

    private List<AllocationResult.Kept> kept(SharedWater.Best best, RunInMemory with, double[] relaxed) {
        double[][] superposed = effects.of(best.rates(), requirements.all());
        double[][] found = requirements.margins(with);
        double[] prices = served.prices();
        List<AllocationResult.Kept> kept = new ArrayList<>();
        for (int r = 0; r < found.length; r++) {
            Requirement one = requirements.all().get(r);
            LimitPrice price =
                    prices[r] == 0 ? LimitPrice.NONE : LimitPrice.of(prices[r], step -> gainByMoreOf(one, step, best));
            kept.add(AllocationFindings.kept(
                    one, superposed[r], found[r], relaxed[r], requirements.reserve(with, one), price));
        }
        return kept;
    }

    /** What a little more of a requirement gains, solved again. */
    private double gainByMoreOf(Requirement one, double step, SharedWater.Best best) {
        one.relax(step);
        double gain = best.value() - best(new double[requirements.all().size()]).value();
        one.relax(-step);
        return gain;
    }
}
