package org.headfall.scenarios.allocation;

import java.util.Arrays;
import java.util.Optional;
import org.headfall.solver.bore.WellLoss;

/**
 * Something that rates must keep on some days: a limit at a place, or the lowest level in a bore.
 *
 * <p>{@code margin = base - effect - loss}, with the base what is left without the looked-for taking, the effect linear in
 * the rates, and the loss of the bore itself, if it is about a level.
 */
final class Requirement {

    private final String name;
    private final String unit;
    private final int station;
    private final int declineYears;
    private final double perMetre;
    private final boolean[] counted;
    private final double[] days;
    private final Optional<Level> level;
    private final double[] base;

    /**
     * The level in a bore.
     *
     * @param bore number of the bore among those looked for
     * @param loss its loss
     */
    record Level(int bore, WellLoss loss) {}

    Requirement(
            String name,
            String unit,
            int station,
            int declineYears,
            double perMetre,
            boolean[] counted,
            double[] days,
            Optional<Level> level) {
        this.name = name;
        this.unit = unit;
        this.station = station;
        this.declineYears = declineYears;
        this.perMetre = perMetre;
        this.counted = counted;
        this.days = days;
        this.level = level;
        base = new double[days.length];
    }

    String name() {
        return name;
    }

    String unit() {
        return unit;
    }

    int station() {
        return station;
    }

    /** Years over which a rate of decline is a mean; 0 if head itself is limited. */
    int declineYears() {
        return declineYears;
    }

    /** By how much the limited value changes per metre of head. */
    double perMetre() {
        return perMetre;
    }

    /** Which of the looked-for bores count. */
    boolean[] counted() {
        return counted;
    }

    double[] days() {
        return days;
    }

    Optional<Level> level() {
        return level;
    }

    double base(int day) {
        return base[day];
    }

    void setBase(int day, double value) {
        base[day] = value;
    }

    /** Gives way by an amount on all days. */
    void relax(double amount) {
        Arrays.setAll(base, day -> base[day] + amount);
    }
}
