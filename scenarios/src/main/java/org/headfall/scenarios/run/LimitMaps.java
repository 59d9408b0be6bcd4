package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.MapSeries;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.RecordSink;
import org.headfall.scenarios.recording.ReportDate;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.solver.flow.WaterBalance;

/**
 * Keeps heads of the grid for the limits that hold for a part of the map: every year, in a run of less than twenty every
 * twentieth part of it, and less often where that would take too much memory.
 */
final class LimitMaps implements RecordSink {

    /** Numbers that are kept of one run, 160 MB. */
    private static final double MOST_NUMBERS = 2e7;

    private static final int FEWEST = 20;

    private final RunPlan plan;
    private final double[] days;
    private final List<HeadGrid> grids = new ArrayList<>();

    /**
     * Maps of a run.
     *
     * @param plan the run
     */
    LimitMaps(RunPlan plan) {
        this.plan = plan;
        days = areNeeded(plan) ? merged(plan, needed(plan), evenly(plan)) : new double[0];
    }

    private static boolean areNeeded(RunPlan plan) {
        return plan.limits().stream().anyMatch(limit -> limit.place() instanceof LimitPlace.OnMap);
    }

    /**
     * Days that no limit can do without: start, end, report dates, and where a limit begins or ends to count. On these the
     * run is compared with runs that something was changed in.
     *
     * @param plan the run
     * @return the days, increasing; none if no limit holds for a part of the map
     */
    static double[] daysOfDoubts(RunPlan plan) {
        return areNeeded(plan) ? merged(plan, needed(plan), DoubleStream.empty()) : new double[0];
    }

    private static DoubleStream needed(RunPlan plan) {
        return DoubleStream.concat(
                DoubleStream.concat(
                        DoubleStream.of(0, plan.description().endDay()),
                        plan.description().reportDates().stream().mapToDouble(ReportDate::day)),
                Arrays.stream(plan.mapPlaces().days()));
    }

    private static DoubleStream evenly(RunPlan plan) {
        double end = plan.description().endDay();
        int years = (int) (end / RunCalendar.DAYS_PER_YEAR);
        int most = (int) (MOST_NUMBERS / plan.description().grid().cellCount());
        if (years < FEWEST) {
            int parts = Math.min(FEWEST, Math.max(1, most));
            return IntStream.range(1, parts).mapToDouble(i -> end * i / parts);
        }
        int every = (int) Math.ceil((double) years / Math.max(1, most));
        return IntStream.rangeClosed(1, years / every)
                .mapToDouble(i -> plan.description().calendar().yearsAfter(0, (long) i * every));
    }

    private static double[] merged(RunPlan plan, DoubleStream first, DoubleStream second) {
        double end = plan.description().endDay();
        return DoubleStream.concat(first, second)
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
     * @param headError largest numerical error of head of all cells and days, by time stepping and solver (m)
     */
    MapSeries series(StartState start, double headError) {
        MapComparisons others = new MapComparisons(plan.description(), plan.problem(), start, plan.settings(), days);
        return new MapSeries(grids, others.forLimits(plan.limits()), headError);
    }
}
