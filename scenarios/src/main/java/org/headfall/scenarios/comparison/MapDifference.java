package org.headfall.scenarios.comparison;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Heads of both runs on a date, on the cells of the first.
 *
 * @param date the date
 * @param day the same in days since the start of the first run
 * @param lowerBy how much lower head is in the second run (m) in each cell, NaN where either has no aquifer; not copied,
 *     must not change
 */
@SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, shared and never compared
public record MapDifference(LocalDate date, double day, double[] lowerBy) {

    /** Differences on all dates for which both runs have a grid, in order of time, on the grid of the first. */
    static List<MapDifference> between(FinishedRun first, FinishedRun second) {
        Map<LocalDate, HeadGrid> others = new LinkedHashMap<>();
        second.recording().grids().forEach(grid -> others.put(CommonDates.date(second, grid.day()), grid));
        RectilinearGrid from = second.description().grid();
        RectilinearGrid to = first.description().grid();
        boolean oneGrid = new CellPairs(from, to).isOneGrid();
        HeadsOnOtherGrid moved = new HeadsOnOtherGrid(from, to);
        List<MapDifference> differences = new ArrayList<>();
        for (HeadGrid grid : first.recording().grids()) {
            LocalDate date = CommonDates.date(first, grid.day());
            HeadGrid other = others.get(date);
            if (other != null) {
                double[] head = oneGrid ? other.head() : moved.of(other.head());
                double[] lower = new double[head.length];
                Arrays.setAll(lower, cell -> grid.head()[cell] - head[cell]);
                differences.add(new MapDifference(date, grid.day(), lower));
            }
        }
        return differences;
    }
}
