package org.headfall.scenarios.capping;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.run.RunFromResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.SuperposedBalances;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.response.SuperposedRun;
import org.headfall.solver.response.SuperposedState;

/**
 * Shuts each bore that flows by itself on the first day, one at a time, and superposes what that gives to all other places.
 * Everything else goes on as in the run: other bores that flow by themselves and springs give more, and that is counted.
 */
public final class CappingStudy {

    private final RunPlan plan;
    private final RunFromResponses answers;
    private final SuperposedBalances balances;

    /**
     * A study.
     *
     * @param plan the run
     * @param answers the run answered from unit responses
     * @param balances water balances of runs from its start
     */
    public CappingStudy(RunPlan plan, RunFromResponses answers, SuperposedBalances balances) {
        this.plan = plan;
        this.answers = answers;
        this.balances = balances;
    }

    /**
     * Whether there is anything to study: a bore that flows by itself on the first day.
     *
     * @param plan a run
     */
    public static boolean hasWork(RunPlan plan) {
        return plan.problem().bores().stream().anyMatch(CappingStudy::flows);
    }

    private static boolean flows(Bore bore) {
        return bore.operationAt(0) instanceof Operation.FreeFlow;
    }

    /**
     * The bores that flow by themselves on the first day, the one with the largest gain at springs for the water saved
     * first; without springs, the one with the largest gain at other places.
     *
     * @return the bores
     * @throws IllegalStateException if the run cannot be answered from unit responses
     */
    public List<ShutBore> inOrder() {
        SuperposedRun asItIs = answers.answer()
                .orElseThrow(() -> new IllegalStateException(answers.inexact().orElse("")));
        WaterBalance balance = balances.of(asItIs);
        List<ShutBore> bores = new ArrayList<>();
        for (int bore = 0; bore < plan.problem().bores().size(); bore++) {
            if (flows(plan.problem().bores().get(bore))) {
                bores.add(shut(bore, asItIs.states(), balance));
            }
        }
        bores.sort(Comparator.comparingDouble(ShutBore::gain).reversed());
        return bores;
    }

    private ShutBore shut(int bore, List<SuperposedState> asItIs, WaterBalance balance) {
        List<Bore> bores = new ArrayList<>(plan.problem().bores());
        bores.set(bore, bores.get(bore).withPhases(List.of()));
        SuperposedRun run = answers.superposed(plan.problem().withBores(bores));
        List<SuperposedState> shut = run.states();
        List<Gain> gains = new ArrayList<>();
        for (int station = 0; station < plan.description().stations().size(); station++) {
            if (station != bore) {
                for (int k = 0; k < shut.size(); k++) {
                    gains.add(gain(station, asItIs.get(k), shut.get(k)));
                }
            }
        }
        Station.BoreSite site = plan.description().bores().get(bore);
        SavedWater water = SavedWater.between(balance, balances.of(run), site.name());
        return new ShutBore(
                site.name(), site.holder(), water.saved() / plan.description().endDay(), water, gains);
    }

    private Gain gain(int station, SuperposedState before, SuperposedState after) {
        Station place = plan.description().stations().get(station);
        boolean discharges = station < before.discharge().length;
        double more = discharges ? after.discharge()[station] - before.discharge()[station] : Double.NaN;
        double outlet = place.outletLevel().orElse(Double.NaN);
        boolean again = before.head()[station] < outlet && after.head()[station] >= outlet;
        return new Gain(
                place.name(),
                place.kind(),
                place instanceof Station.BoreSite bore ? bore.holder() : "",
                before.day(),
                after.head()[station] - before.head()[station],
                more,
                again);
    }
}
