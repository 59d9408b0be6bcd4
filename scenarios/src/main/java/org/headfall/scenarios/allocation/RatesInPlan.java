package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.schedule.StepSchedule;

/** A plan with other rates of some bores, whatever head or rule they had; a level is no bound here, but is looked at. */
final class RatesInPlan {

    private final RunPlan plan;
    private final RateBlocks blocks;
    private final int[] bores;

    RatesInPlan(RunPlan plan, RateBlocks blocks, int[] bores) {
        this.plan = plan;
        this.blocks = blocks;
        this.bores = bores;
    }

    /** The plan with rates, bore by bore and group by group (m³/d). */
    RunPlan with(double[] rates, double[] days) {
        List<Bore> all = new ArrayList<>(plan.problem().bores());
        for (int b = 0; b < bores.length; b++) {
            Operation taking = new Operation.PumpedRate(schedule(rates, b), OptionalDouble.empty());
            all.set(bores[b], all.get(bores[b]).withPhases(List.of(new OperatingPhase(0, taking))));
        }
        return plan.ofStations(all, days, plan.limits());
    }

    /**
     * Days on which levels and limits are looked at: a little before rates change, and on each day on which anything else
     * changes, as a level may be lowest within a block when a neighbour stops. A record holds what is there before a change on
     * its day.
     *
     * @param moments a day of each block (d)
     * @return days, increasing (d)
     */
    double[] watchedDays(double[] moments) {
        List<Bore> others = new ArrayList<>(plan.problem().bores());
        for (int bore : bores) {
            others.set(bore, others.get(bore).withPhases(List.of()));
        }
        FlowProblem resting = plan.problem().withBores(others);
        double end = plan.description().endDay();
        return Stream.of(moments, resting.jumps(0, end), resting.bends(0, end))
                .flatMapToDouble(Arrays::stream)
                .sorted()
                .distinct()
                .toArray();
    }

    private StepSchedule schedule(double[] rates, int bore) {
        double[] starts = blocks.changeDays();
        double[] values = new double[starts.length];
        Arrays.setAll(
                values,
                i -> blocks.from(starts[i])
                        .map(block -> rates[bore * blocks.groups() + block.group()])
                        .orElse(0.0));
        return new StepSchedule(starts, values);
    }
}
