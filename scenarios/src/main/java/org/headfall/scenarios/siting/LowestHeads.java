package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.headfall.scenarios.recording.RecordSink;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.solver.flow.WaterBalance;

/**
 * Lowest head of each cell by the bores of the document, in parts of the time in which new bores take. Drawdown of a steady
 * bore by itself only grows, so the lowest head of a part with the own drawdown of its last day is never above the lowest
 * level of the part. Parts are so short that it is hardly below: drawdown that grows with the logarithm of time grows by
 * {@code ln 1.1 / (4 pi T)} at most, some 0.6 % of what it is in a bore (Cooper and Jacob 1946), that of a closed aquifer by a
 * 64th of what it is at the end.
 */
public final class LowestHeads implements RecordSink {

    private static final double LONGEST_RATIO = 1.1;
    private static final double LONGEST_SHARE = 1.0 / 64;

    private final double[] days;
    private final double[] ends;
    private final float[][] lowest;

    private LowestHeads(double[] days, int cells) {
        this.days = days;
        ends = ends(days);
        lowest = new float[ends.length][cells];
        for (float[] part : lowest) {
            Arrays.fill(part, Float.POSITIVE_INFINITY);
        }
    }

    /**
     * Heads that are still to be recorded.
     *
     * @param plan the plan whose run records them
     * @param siting what is looked for
     * @return heads on every day on which the plan records stations, and on which a rate, an operation or a boundary jumps or
     *     bends: in between a head may be lowest when a neighbour stops
     */
    static LowestHeads toRecord(RunPlan plan, SitingSpecification siting) {
        double last = siting.days();
        double[] days = Stream.of(
                        plan.stationDays(),
                        plan.problem().jumps(0, last),
                        plan.problem().bends(0, last))
                .flatMapToDouble(Arrays::stream)
                .filter(day -> day > 0 && day < last)
                .sorted()
                .distinct()
                .toArray();
        return new LowestHeads(
                DoubleStream.concat(Arrays.stream(days), DoubleStream.of(last)).toArray(),
                plan.description().grid().cellCount());
    }

    /** Last day of each part: of days one after the other that are near enough to the first of them. */
    private static double[] ends(double[] days) {
        double longest = LONGEST_SHARE * days[days.length - 1];
        List<Double> ends = new ArrayList<>();
        double first = days[0];
        for (int i = 1; i < days.length; i++) {
            if (days[i] > first * LONGEST_RATIO || days[i] - first > longest) {
                ends.add(days[i - 1]);
                first = days[i];
            }
        }
        ends.add(days[days.length - 1]);
        return ends.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Days on which heads are wanted (d), increasing; the last is that on which new bores stop. */
    double[] days() {
        return days.clone();
    }

    @Override
    public void grid(double day, double[] head, WaterBalance balance, double[] notConfinedSince) {
        if (!(day > 0 && day <= days[days.length - 1])) {
            return; // on day 0 no new bore has begun
        }
        int found = Arrays.binarySearch(ends, day);
        float[] part = lowest[found >= 0 ? found : -found - 1];
        for (int cell = 0; cell < part.length; cell++) {
            part[cell] = Math.min(part[cell], (float) head[cell]);
        }
    }

    /** Last day of each part (d), increasing. */
    double[] ends() {
        return ends.clone();
    }

    /** A copy of the lowest head of each cell in each part, {@code [part][cell]} (m above datum). */
    float[][] copy() {
        return Arrays.stream(lowest).map(float[]::clone).toArray(float[][]::new);
    }
}
