package org.headfall.scenarios.recording;

import java.util.List;
import org.headfall.solver.flow.WaterBalance;

/**
 * What a run recorded. Arrays are not copied and must not change.
 *
 * @param days recorded days, increasing, the first is the start
 * @param series series of each station, in the order of the stations
 * @param balances water balance of each period between gridded records, in order of time
 * @param grids heads of the whole grid: at the start, at the report dates that were reached, at the end; in order of
 *     time
 * @param notConfinedSince of each cell, the first recorded day with head below the aquifer top; NaN if never
 */
@SuppressWarnings("ArrayRecordComponent") // fields and series shared by all analyses, never compared
public record Recording(
        double[] days,
        List<StationSeries> series,
        List<WaterBalance> balances,
        List<HeadGrid> grids,
        double[] notConfinedSince) {

    /** Copies the lists. */
    public Recording {
        series = List.copyOf(series);
        balances = List.copyOf(balances);
        grids = List.copyOf(grids);
    }

    /** First recorded day. */
    public double startDay() {
        return days[0];
    }

    /** Last recorded day. */
    public double endDay() {
        return days[days.length - 1];
    }

    /** Heads of the grid at the start. */
    public HeadGrid startGrid() {
        return grids.get(0);
    }
}
