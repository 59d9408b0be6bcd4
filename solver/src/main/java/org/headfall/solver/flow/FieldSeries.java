package org.headfall.solver.flow;

import java.util.List;
import org.headfall.solver.linear.WorkerTeam;

/** Heads of all cells and water balances of a run found by superposition, day after day. */
public final class FieldSeries {

    /** Fields made side by side, so that solutions are read less often. */
    private static final int SIDE_BY_SIDE = 16;

    private final SourceFields fields;
    private final double[] startHead;

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
     */
    public FieldSeries(SourceFields fields, double[] startHead) {
        this.fields = fields;
        this.startHead = startHead;
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
        for (int first = 0; first < days.size(); first += SIDE_BY_SIDE) {
            List<ReachedDay> some = days.subList(first, Math.min(days.size(), first + SIDE_BY_SIDE));
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
