package org.headfall.solver.flow;

import java.util.List;
import org.headfall.solver.linear.WorkerTeam;

/** Heads of all cells and water balances of a run found by superposition, day after day. */
public final class FieldSeries {

    /** Fields made side by side while all solutions are kept. */
    private static final int SIDE_BY_SIDE = 16;

    private static final int BYTES_PER_CELL_AND_DAY = 2 * Float.BYTES;

    private final SourceFields fields;
    private final double[] startHead;
    private final int block;

    /** Is told of each day. */
    @FunctionalInterface
    public interface Observer {
        /**
         * Takes a day.
         *
         * @param day the day (d)
         * @param head head of each cell (m above datum), valid during the call only
         * @param balance water that has passed since the day before, or the start
         */
        void reached(double day, double[] head, WaterBalance balance);
    }

    /**
     * Series of a run.
     *
     * @param fields what sources do to all cells
     * @param startHead head of each cell at the start (m above datum)
     * @param bytes memory that heads of several days may take: solutions that were not kept are made again for as many days as
     *     fit
     */
    public FieldSeries(SourceFields fields, double[] startHead, long bytes) {
        this.fields = fields;
        this.startHead = startHead;
        block = sideBySide(fields, bytes);
    }

    private static int sideBySide(SourceFields fields, long bytes) {
        long fitting = bytes / BYTES_PER_CELL_AND_DAY / fields.cells();
        return fields.areKept() ? SIDE_BY_SIDE : (int) Math.max(1, Math.min(Integer.MAX_VALUE, fitting));
    }

    /**
     * How many times solutions that were not kept are made again for a number of days.
     *
     * @param fields the solutions
     * @param days the number of days
     * @param bytes memory that heads of several days may take
     * @return number of times; none if solutions were kept
     */
    public static int rounds(SourceFields fields, int days, long bytes) {
        int block = sideBySide(fields, bytes);
        return fields.areKept() ? 0 : (days - 1) / block + 1;
    }

    /**
     * Makes the fields.
     *
     * @param days the days, increasing, after the start
     * @param team threads
     * @param observer is told of each day
     */
    public void run(List<ReachedDay> days, WorkerTeam team, Observer observer) {
        FieldBalance balance = new FieldBalance(fields, startHead);
        double[] head = new double[startHead.length];
        for (int first = 0; first < days.size(); first += block) {
            List<ReachedDay> some = days.subList(first, Math.min(days.size(), first + block));
            FieldSums sums = fields.sums(some.stream().map(ReachedDay::weights).toArray(double[][][]::new), team);
            for (int i = 0; i < some.size(); i++) {
                float[] drawdown = sums.drawdown(i);
                for (int cell = 0; cell < head.length; cell++) {
                    head[cell] = startHead[cell] - drawdown[cell];
                }
                observer.reached(some.get(i).day(), head, balance.close(some.get(i), head, sums.releasedByBed(i)));
            }
        }
    }
}
