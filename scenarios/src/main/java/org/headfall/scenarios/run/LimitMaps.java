package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.MapSeries;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.RecordSink;
import org.headfall.scenarios.recording.ReportDate;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.simulation.Simulation;
import org.headfall.solver.simulation.SimulationObserver;
import org.headfall.solver.simulation.Snapshot;

/**
 * Keeps heads of the grid for the limits that hold for a part of the map, and makes the other runs that these compare
 * with: unit responses are known at stations only.
 */
final class LimitMaps implements RecordSink {

    private final RunPlan plan;
    private final List<Limit> limits;
    private final double[] days;
    private final List<HeadGrid> grids = new ArrayList<>();

    /**
     * Maps of a run.
     *
     * @param plan the run
     */
    LimitMaps(RunPlan plan) {
        this.plan = plan;
        limits = plan.limits().stream()
                .filter(limit -> limit.place() instanceof LimitPlace.OnMap)
                .toList();
        days = limits.isEmpty() ? new double[0] : days(plan);
    }

    private static double[] days(RunPlan plan) {
        double end = plan.description().endDay();
        return DoubleStream.concat(
                        DoubleStream.concat(
                                DoubleStream.of(0, end),
                                plan.description().reportDates().stream().mapToDouble(ReportDate::day)),
                        Arrays.stream(plan.mapPlaces().days()))
                .filter(day -> day >= 0 && day <= end)
                .sorted()
                .distinct()
                .toArray();
    }

    /** Days on which heads of the grid are needed, increasing; none if no limit holds for a part of the map. */
    double[] days() {
        return days.clone();
    }

    @Override
    public void grid(double day, double[] head, WaterBalance balance, double[] notConfinedSince) {
        if (Arrays.binarySearch(days, day) >= 0) {
            grids.add(new HeadGrid(day, head.clone()));
        }
    }

    /** The grids that have been kept. */
    List<HeadGrid> grids() {
        return List.copyOf(grids);
    }

    /**
     * The maps with those of the other runs, other cases excepted.
     *
     * @param start the start of the run
     * @param headError largest numerical error of head of all cells and days (m)
     */
    MapSeries series(StartState start, double headError) {
        Map<Comparison, List<HeadGrid>> others = new HashMap<>();
        for (Limit limit : limits) {
            if (limit.needsOtherRun() && !(limit.comparison() instanceof Comparison.WithCase)) {
                others.computeIfAbsent(limit.comparison(), comparison -> other(comparison, start));
            }
        }
        return new MapSeries(grids, others, headError);
    }

    private List<HeadGrid> other(Comparison comparison, StartState start) {
        if (comparison instanceof Comparison.BeforeAnyTaking) {
            double[] heads = StartState.of(plan.problem(), new StartHeads.Steady(Set.of()), plan.settings())
                    .heads();
            return Arrays.stream(days).mapToObj(day -> new HeadGrid(day, heads)).toList();
        }
        FlowProblem without = StoppedTaking.always(plan.problem(), LeftOut.bores(plan.description(), comparison));
        List<HeadGrid> kept = new ArrayList<>();
        kept.add(new HeadGrid(0, start.heads()));
        SimulationObserver observer = new SimulationObserver() {
            @Override
            public void recorded(Snapshot snapshot) {
                if (snapshot.day() > 0) {
                    kept.add(new HeadGrid(snapshot.day(), snapshot.head().clone()));
                }
            }
        };
        try (Simulation simulation = new Simulation(without, plan.settings())) {
            simulation.run(start.heads(), 0, plan.description().endDay(), days, observer);
        }
        return kept;
    }
}
