package org.headfall.solver.bore;

import java.util.List;
import org.headfall.solver.wording.PlainNumber;

/**
 * A bore.
 *
 * @param name unique among bores and springs
 * @param x easting (m)
 * @param y northing (m)
 * @param screenRadius radius at the screen face (m), positive
 * @param wellLoss loss between aquifer and bore, without that of the skin
 * @param skin skin (-), not negative: the part of loss that depends on T, {@code skin Q / (2 pi T)}, by a damaged wall
 *     and by a screen shorter than the aquifer ({@link PartialPenetration})
 * @param column water that fills the bore
 * @param phases operations in order of their first day; before the first the bore is off
 */
public record Bore(
        String name,
        double x,
        double y,
        double screenRadius,
        WellLoss wellLoss,
        double skin,
        WaterColumn column,
        List<OperatingPhase> phases) {

    private static final Operation OFF = new Operation.Off();

    /** Checks radius and skin, and the order of the phases. */
    public Bore {
        if (!(screenRadius > 0 && Double.isFinite(screenRadius))) {
            throw new IllegalArgumentException("bore '" + name + "': screen radius must be positive, found "
                    + PlainNumber.of(screenRadius) + " m");
        }
        if (!(skin >= 0 && Double.isFinite(skin))) {
            throw new IllegalArgumentException("bore '" + name + "': skin must not be negative, found "
                    + PlainNumber.of(skin) + "; a bore better than its radius has a larger radius");
        }
        phases = List.copyOf(phases);
        for (int i = 1; i < phases.size(); i++) {
            if (phases.get(i).fromDay() <= phases.get(i - 1).fromDay()) {
                throw new IllegalArgumentException("bore '" + name + "': phases must follow each other, found day "
                        + PlainNumber.of(phases.get(i).fromDay()) + " after day "
                        + PlainNumber.of(phases.get(i - 1).fromDay()));
            }
        }
    }

    /**
     * A bore without skin, full of water of the reference temperature.
     *
     * @param name unique among bores and springs
     * @param x easting (m)
     * @param y northing (m)
     * @param screenRadius radius at the screen face (m), positive
     * @param wellLoss loss between aquifer and bore
     * @param phases operations in order of their first day
     */
    public Bore(String name, double x, double y, double screenRadius, WellLoss wellLoss, List<OperatingPhase> phases) {
        this(name, x, y, screenRadius, wellLoss, 0, WaterColumn.REFERENCE, phases);
    }

    /** The same bore, operated otherwise. */
    public Bore withPhases(List<OperatingPhase> others) {
        return new Bore(name, x, y, screenRadius, wellLoss, skin, column, others);
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
            if (phase.fromDay() > day) {
                break;
            }
            operation = phase.operation();
        }
        return operation;
    }

    /**
     * All loss between the aquifer at the bore wall and the water in the bore.
     *
     * @param transmissivity T of the aquifer at the bore (m²/d), positive; the geometric mean of both directions
     * @return loss of bore and skin
     */
    public WellLoss lossIn(double transmissivity) {
        return skin == 0 ? wellLoss : wellLoss.plusLinear(skin / (2 * Math.PI * transmissivity));
    }
}
