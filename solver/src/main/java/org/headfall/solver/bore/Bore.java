package org.headfall.solver.bore;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A bore that taps the aquifer over its full thickness.
 *
 * @param name unique among bores and springs
 * @param x easting (m)
 * @param y northing (m)
 * @param screenRadius radius at the screen face (m), positive
 * @param wellLoss loss between aquifer and bore
 * @param phases operations in order of their first day; before the first the bore is off
 */
public record Bore(
        String name, double x, double y, double screenRadius, WellLoss wellLoss, List<OperatingPhase> phases) {

    private static final Operation OFF = new Operation.Off();

    /** Checks the radius and the order of the phases. */
    public Bore {
        if (!(screenRadius > 0 && Double.isFinite(screenRadius))) {
            throw new IllegalArgumentException(
                    "bore '" + name + "': screen radius must be positive, found " + screenRadius + " m");
        }
        phases = List.copyOf(phases);
        for (int i = 1; i < phases.size(); i++) {
            if (phases.get(i).fromDay() <= phases.get(i - 1).fromDay()) {
                throw new IllegalArgumentException("bore '" + name + "': phases must follow each other, found day "
                        + phases.get(i).fromDay() + " after day "
                        + phases.get(i - 1).fromDay());
            }
        }
    }

    /**
     * Operation in force at a day.
     *
     * @param day days since the start of the period
     * @return the operation
     */
    public Operation operationAt(double day) {
        Operation operation = OFF;
        for (OperatingPhase phase : phases) {
            if (phase.fromDay() <= day) {
                operation = phase.operation();
            }
        }
        return operation;
    }

    /** Outlet level of the first free-flowing phase (m above datum), if the bore ever flows freely. */
    public OptionalDouble freeFlowOutlet() {
        return phases.stream()
                .filter(phase -> phase.operation() instanceof Operation.FreeFlow)
                .mapToDouble(phase -> ((Operation.FreeFlow) phase.operation()).outletLevel())
                .findFirst();
    }
}
