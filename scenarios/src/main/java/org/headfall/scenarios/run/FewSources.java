package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LeftOut;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.PointHeads;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.recording.TakenVolumes;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.scenario.Solving;
import org.headfall.solver.flow.ChangingSources;
import org.headfall.solver.flow.GivenRates;
import org.headfall.solver.flow.UnmetRuleException;
import org.headfall.solver.response.CombinedRun;
import org.headfall.solver.response.CombinedSources;
import org.headfall.solver.response.SuperpositionException;

/**
 * One of many runs, of which figures at bores, springs and points are wanted alone and nothing by single bores, answered from
 * few sources: bores at given rates that change in proportion are one ({@link CombinedSources}). Bores stay apart where a limit
 * compares the run with itself without some of them.
 */
public final class FewSources {

    private static final String SOURCE = "few sources of its own";

    private final RunPlan plan;
    private final List<Comparison> comparisons;
    private final Kinds kinds;
    private final CombinedSources.Start start;
    private final GivenRates given;
    private final int others;
    private final double[] days;
    private final long started = System.nanoTime();

    private FewSources(RunPlan plan) {
        this.plan = plan;
        comparisons = plan.limits().stream()
                .filter(ComparisonRuns::areNeededBy)
                .map(Limit::comparison)
                .distinct()
                .toList();
        kinds = new Kinds(plan, comparisons);
        start = plan.start() instanceof StartHeads.Steady steady
                ? CombinedSources.Start.fromSteady(steady.problem(plan.problem()))
                : CombinedSources.Start.fromGiven(plan.start().given().orElseThrow());
        others = ChangingSources.afterSteady(plan.problem()).size()
                + (plan.start().given().isPresent() ? 1 : 0);
        days = RecordPlan.of(plan.description(), plan.stationDays(), plan.gridDays())
                .days();
        given = new GivenRates(
                plan.problem(),
                start.atRest(),
                kinds.ofBores,
                plan.description().endDay());
    }

    /**
     * Answers a run, if that takes fewer solves than unit responses of its own, about as few as a simulation or fewer, and is
     * exact enough. Where limits compare it with other runs, each a simulation of its own, only the first is asked. Whether
     * it is follows from the run alone.
     *
     * @param plan the run
     * @return the finished run, without grids, water balance and anything by cause; empty if it is to be found otherwise
     */
    public static Optional<FinishedRun> answer(RunPlan plan) {
        return suited(plan).flatMap(FewSources::answered);
    }

    /**
     * Whether it takes fewer solves than what would answer the run otherwise. Where limits compare it with itself without some
     * bores, that is {@link OwnResponses}, which then solves for every bore and spring apart, however few records there are;
     * one source less is one source saved. Elsewhere it is a simulation.
     */
    private boolean pays() {
        int apart = plan.problem().bores().size() + plan.problem().springs().size() + others;
        return sources() < apart
                && (!comparisons.isEmpty() || AnswerAtStations.takesFewerSolvesThanSteps(sources(), plan));
    }

    /** Sources to solve for: what follows head, given rates together, and boundaries, recharge and a start out of balance. */
    private int sources() {
        int following = plan.problem().bores().size()
                - given.bores().length
                + plan.problem().springs().size();
        long together = given.sources().stream()
                .filter(source -> !source.givenBack() || kinds.leftOut[source.kind()])
                .count();
        return following + (int) together + others;
    }

    /**
     * About how many solves of the grid the answer of a run takes, if it is tried.
     *
     * @param plan the run
     * @return the number; empty if it is found otherwise
     */
    public static OptionalInt expectedSolves(RunPlan plan) {
        return suited(plan).stream()
                .mapToInt(run -> AnswerAtStations.SOLVES_PER_SOURCE * run.sources())
                .findFirst();
    }

    private static Optional<FewSources> suited(RunPlan plan) {
        return plan.solving() != Solving.BY_STEPS
                        && AnswerAtStations.limitBeyond(plan).isEmpty()
                ? Optional.of(new FewSources(plan)).filter(FewSources::pays)
                : Optional.empty();
    }

    private Optional<FinishedRun> answered() {
        double accuracy = RunFromResponses.accuracyOfSteps(plan);
        CombinedSources sources = new CombinedSources(
                plan.problem(),
                start,
                PointHeads.of(plan.description(), plan.problem().boundaries()),
                given,
                kinds.leftOut,
                days,
                plan.settings());
        try {
            CombinedRun run = sources.run(days, accuracy);
            List<CombinedRun> all = new ArrayList<>(List.of(run));
            StationAnswer answer = new StationAnswer(plan, SOURCE, Optional.empty(), started);
            List<StationSeries> series = answer.series(run.states());
            Map<Comparison, List<StationSeries>> compared = new LinkedHashMap<>();
            for (Comparison comparison : comparisons) {
                if (comparison instanceof Comparison.BeforeAnyTaking) {
                    compared.put(
                            comparison, ComparisonRuns.beforeAnyTaking(plan.description(), plan.problem(), accuracy));
                } else {
                    CombinedRun without = sources.runWithout(kinds.without(comparison), days, accuracy);
                    all.add(without);
                    compared.put(comparison, answer.series(without.states()));
                }
            }
            double error =
                    all.stream().mapToDouble(CombinedRun::estimatedError).max().orElseThrow();
            boolean holds = error <= RunFromResponses.PROMISED
                    && all.stream().allMatch(one -> one.unmetRule().isEmpty());
            int bores = plan.problem().bores().size();
            return holds
                    ? Optional.of(answer.withoutCauses(
                            new RunSeries(series, compared, Optional.of(TakenVolumes.of(run.history(), bores))),
                            run.history().steps(),
                            error))
                    : Optional.empty();
        } catch (UnmetRuleException | SuperpositionException notByFewSources) {
            return Optional.empty();
        }
    }

    /** Kinds of bores: those of a kind are left out of the same runs. */
    private static final class Kinds {

        private final List<Comparison> comparisons;
        private final List<BitSet> leftOutBy = new ArrayList<>();
        private final int[] ofBores;
        private final boolean[] leftOut;

        Kinds(RunPlan plan, List<Comparison> comparisons) {
            this.comparisons = comparisons;
            ofBores = new int[plan.problem().bores().size()];
            BitSet[] of = new BitSet[ofBores.length];
            Arrays.setAll(of, bore -> new BitSet());
            for (int i = 0; i < comparisons.size(); i++) {
                BitSet out = LeftOut.any(comparisons.get(i))
                        ? LeftOut.bores(plan.description(), comparisons.get(i))
                        : new BitSet();
                for (int bore = out.nextSetBit(0); bore >= 0; bore = out.nextSetBit(bore + 1)) {
                    of[bore].set(i);
                }
            }
            Map<BitSet, Integer> known = new HashMap<>();
            for (int bore = 0; bore < of.length; bore++) {
                int next = leftOutBy.size();
                ofBores[bore] = known.computeIfAbsent(of[bore], unknown -> next);
                if (ofBores[bore] == next) {
                    leftOutBy.add(of[bore]);
                }
            }
            leftOut = new boolean[leftOutBy.size()];
            for (int kind = 0; kind < leftOut.length; kind++) {
                leftOut[kind] = !leftOutBy.get(kind).isEmpty();
            }
        }

        boolean[] without(Comparison comparison) {
            boolean[] out = new boolean[leftOut.length];
            for (int kind = 0; kind < out.length; kind++) {
                out[kind] = leftOutBy.get(kind).get(comparisons.indexOf(comparison));
            }
            return out;
        }
    }
}
