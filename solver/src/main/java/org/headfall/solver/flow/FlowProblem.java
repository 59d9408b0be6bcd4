package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.nearfield.CentreHeads;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.wording.PlainNumber;

/**
 * Everything that decides heads but the start: the aquifer, what borders it, and who takes from it.
 *
 * @param aquifer the aquifer
 * @param sealingBed bed above it, if it leaks
 * @param boundaries pieces of the rim through which water passes; they must not overlap
 * @param recharges recharge by rain
 * @param springs springs, in the order of all results
 * @param bores bores, in the order of all results
 */
public record FlowProblem(
        Aquifer aquifer,
        Optional<SealingBed> sealingBed,
        List<OuterBoundary> boundaries,
        List<Recharge> recharges,
        List<Spring> springs,
        List<Bore> bores) {

    /** Copies the lists and checks names and places. */
    public FlowProblem {
        boundaries = List.copyOf(boundaries);
        recharges = List.copyOf(recharges);
        springs = List.copyOf(springs);
        bores = List.copyOf(bores);
        Set<String> names = new HashSet<>();
        springs.forEach(spring -> requirePlace(aquifer, names, "spring", spring.name(), spring.x(), spring.y()));
        bores.forEach(bore -> requirePlace(aquifer, names, "bore", bore.name(), bore.x(), bore.y()));
    }

    private static void requirePlace(Aquifer aquifer, Set<String> names, String kind, String name, double x, double y) {
        if (!names.add(name)) {
            throw new IllegalArgumentException("two bores or springs are called '" + name + "'");
        }
        int cell = aquifer.grid().locate(x, y);
        if (cell < 0 || !aquifer.active()[cell]) {
            throw new IllegalArgumentException(kind + " '" + name + "' at (" + PlainNumber.of(x) + ", "
                    + PlainNumber.of(y) + ") m stands "
                    + (cell < 0 ? "outside the grid" : "in cell " + cell + ", which is not part of the aquifer"));
        }
    }

    /**
     * Near field of a bore in this aquifer, whose sides it knows.
     *
     * @param x easting (m)
     * @param y northing (m)
     * @param radius radius at the screen face (m)
     * @throws IllegalArgumentException if the place lies outside the active aquifer
     */
    public NearField nearField(double x, double y, double radius) {
        return NearField.at(aquifer, boundaries, x, y, radius);
    }

    /**
     * All loss between the aquifer at the wall of a bore and the water in it, with the transmissivity where the bore stands.
     *
     * @param bore a bore, in a cell of the aquifer
     * @return the loss
     */
    public WellLoss lossIn(Bore bore) {
        return bore.lossIn(aquifer.effectiveTransmissivity(aquifer.grid().locate(bore.x(), bore.y())));
    }

    /** Near field of each bore, in their order. */
    public List<NearField> nearFields() {
        return bores.stream()
                .map(bore -> nearField(bore.x(), bore.y(), bore.screenRadius()))
                .toList();
    }

    /** Heads at the centres of cells, for maps, from heads that the grid carries. */
    public CentreHeads centreHeads() {
        return new CentreHeads(nearFields());
    }

    /** The same problem with other bores. */
    public FlowProblem withBores(List<Bore> others) {
        return new FlowProblem(aquifer, sealingBed, boundaries, recharges, springs, others);
    }

    /**
     * Days after {@code from} and before {@code to} on which a rate, an operation or a boundary jumps, in increasing
     * order.
     *
     * @param from day the run starts
     * @param to day the run ends
     * @return the days
     */
    public double[] jumps(double from, double to) {
        TreeSet<Double> days = new TreeSet<>();
        schedules().forEach(schedule -> addAll(days, schedule.jumps()));
        bores.forEach(bore -> bore.phases().forEach(phase -> days.add(phase.fromDay())));
        return within(days, from, to);
    }

    /**
     * Days after {@code from} and before {@code to} on which a rate or a boundary changes its slope, in increasing
     * order.
     *
     * @param from day the run starts
     * @param to day the run ends
     * @return the days
     */
    public double[] bends(double from, double to) {
        TreeSet<Double> days = new TreeSet<>();
        schedules().forEach(schedule -> addAll(days, schedule.bends()));
        return within(days, from, to);
    }

    private static void addAll(TreeSet<Double> days, double[] more) {
        for (double day : more) {
            days.add(day);
        }
    }

    private static double[] within(TreeSet<Double> days, double from, double to) {
        return days.stream()
                .mapToDouble(Double::doubleValue)
                .filter(day -> day > from && day < to)
                .toArray();
    }

    private List<Schedule> schedules() {
        List<Schedule> schedules = new ArrayList<>();
        for (OuterBoundary boundary : boundaries) {
            if (boundary instanceof OuterBoundary.FixedHead fixed) {
                schedules.add(fixed.head());
            } else if (boundary instanceof OuterBoundary.GivenFlow given) {
                schedules.add(given.inflow());
            } else if (boundary instanceof OuterBoundary.FarHead far) {
                schedules.add(far.head());
            }
        }
        recharges.forEach(recharge -> schedules.add(recharge.factor()));
        for (Bore bore : bores) {
            for (OperatingPhase phase : bore.phases()) {
                if (phase.operation() instanceof Operation.PumpedRate pumped) {
                    schedules.add(pumped.rate());
                }
            }
        }
        return schedules;
    }
}
