package org.headfall.solver.flow;

import java.util.TreeSet;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.schedule.Schedule;

/**
 * Water that enters the aquifer whatever its heads are, and more or less of it than at the start: through a boundary
 * whose head or flow changes, as recharge that changes, or because given heads at the start were not at rest.
 *
 * @param name of the boundary or recharge
 * @param shares what each cell receives of it (-); the sizes of all shares add up to 1
 * @param scale inflow (m³/d) by a unit of the schedule
 * @param schedule what it follows
 * @param reference value of the schedule that is no change
 */
public record ChangingSource(String name, CellWeights shares, double scale, Schedule schedule, double reference) {

    /** Inflow less that at the start (m³/d). */
    public double change(double day) {
        return scale * (schedule.at(day) - reference);
    }

    /** Days in increasing order, up to one given, from which on the inflow jumps or runs otherwise; the start is first. */
    public double[] changes(double toDay) {
        TreeSet<Double> days = new TreeSet<>();
        days.add(0.0);
        for (double[] some : new double[][] {schedule.jumps(), schedule.bends()}) {
            for (double day : some) {
                if (day > 0 && day < toDay) {
                    days.add(day);
                }
            }
        }
        return days.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
