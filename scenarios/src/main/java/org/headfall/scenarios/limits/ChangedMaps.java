package org.headfall.scenarios.limits;

import java.util.List;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Heads of the grid of a changed run. Its cells may be wider: the mean of the cells of the run that a wider cell holds is
 * then what it stands for, and the change of that mean is the change of all of them.
 *
 * @param heads heads of the changed run on its own cells, on some of the days of the run
 * @param parents for each cell of the run, the cell of the changed run that holds it
 */
@SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, never compared
public record ChangedMaps(MapSeries heads, int[] parents) {

    /** Nothing was kept. */
    public static final ChangedMaps NONE = new ChangedMaps(MapSeries.NONE, new int[0]);

    /**
     * Change of head of each cell.
     *
     * @param grid grid of the run
     * @param active which of its cells belong to the aquifer
     * @param run heads of the run
     * @param changed heads of the changed run on the same day
     * @return changed head less head of the run (m)
     */
    double[] change(RectilinearGrid grid, boolean[] active, HeadGrid run, HeadGrid changed) {
        double[] sum = new double[changed.head().length];
        double[] area = new double[sum.length];
        for (int cell = 0; cell < parents.length; cell++) {
            if (active[cell]) {
                sum[parents[cell]] += grid.area(cell) * run.head()[cell];
                area[parents[cell]] += grid.area(cell);
            }
        }
        double[] change = new double[parents.length];
        for (int cell = 0; cell < change.length; cell++) {
            int parent = parents[cell];
            change[cell] = active[cell] ? changed.head()[parent] - sum[parent] / area[parent] : 0;
        }
        return change;
    }

    /** Whether it has heads of its own of what a limit compares it with; other cases are not made again. */
    boolean hasReference(Limit limit) {
        return !limit.needsOtherRun() || heads.others().containsKey(limit.comparison());
    }

    /** Heads of the changed run, or of what a limit compares it with, at a place in the order of its days. */
    HeadGrid reference(Limit limit, int record) {
        List<HeadGrid> others = heads.others().get(limit.comparison());
        return others == null ? heads.grids().get(record) : others.get(record);
    }
}
