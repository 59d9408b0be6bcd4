package org.headfall.scenarios.allocation;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.solver.bore.WellLoss;

/**
 * Something that rates must keep on some days: a limit at a place, or the lowest level in a bore.
 *
 * <p>{@code margin = base - effect - loss}, with the base what is left without the looked-for taking, the effect linear in
 * the rates, and the loss of the bore itself, if it is about a level.
 */
final class Requirement {

    private final Subject subject;
    private final int station;
    private final DrawdownByRates.Counted counted;
    private final double[] days;
    private final double[] perMetre;
    private final double[] base;

    /** What must be kept. */
    sealed interface Subject permits OfLimit, OfLevel {}

    /**
     * A limit of the document.
     *
     * @param limit the limit
     */
    record OfLimit(Limit limit) implements Subject {}

    /**
     * The lowest level in a bore.
     *
     * @param name the bore
     * @param bore its number among those looked for
     * @param floor the level (m above datum)
     * @param loss its loss
     */
    record OfLevel(String name, int bore, double floor, WellLoss loss) implements Subject {}

    /**
     * A requirement of which nothing is left yet.
     *
     * @param subject what must be kept
     * @param station where, by its place in the run
     * @param counted whose taking counts
     * @param days when (d)
     * @param perMetre by how much its value changes per metre of head on each day
     */
    Requirement(Subject subject, int station, DrawdownByRates.Counted counted, double[] days, double[] perMetre) {
        this.subject = subject;
        this.station = station;
        this.counted = counted;
        this.days = days;
        this.perMetre = perMetre;
        base = new double[days.length];
    }

    /** A requirement whose value changes as head does. */
    Requirement(Subject subject, int station, DrawdownByRates.Counted counted, double[] days) {
        this(subject, station, counted, days, Arrays.stream(days).map(day -> 1).toArray());
    }

    Subject subject() {
        return subject;
    }

    /** The level in a bore that it is about, if it is about one. */
    Optional<OfLevel> level() {
        return subject instanceof OfLevel level ? Optional.of(level) : Optional.empty();
    }

    private Optional<LimitedQuantity> quantity() {
        return subject instanceof OfLimit of ? Optional.of(of.limit().quantity()) : Optional.empty();
    }

    String name() {
        return subject instanceof OfLimit of
                ? of.limit().nameAndPlace()
                : "lowest level (" + ((OfLevel) subject).name() + ")";
    }

    String unit() {
        return quantity().map(LimitedQuantity::unit).orElse("m");
    }

    String unitOfChange() {
        return quantity().map(LimitedQuantity::unitOfChange).orElse("m");
    }

    /** The allowed value. */
    double allowed() {
        return subject instanceof OfLevel level
                ? level.floor()
                : quantity().orElseThrow().allowed();
    }

    /** What would have to be allowed if it gave way by an amount. */
    double allowedAfter(double amount) {
        boolean fromBelow = quantity().map(LimitedQuantity::limitsFromBelow).orElse(true);
        return fromBelow ? allowed() - amount : allowed() + amount;
    }

    int station() {
        return station;
    }

    /** Years over which a rate of decline is a mean; 0 if head itself is limited. */
    int declineYears() {
        return quantity().orElse(null) instanceof LimitedQuantity.DeclineRate rate ? rate.overYears() : 0;
    }

    /**
     * Days of the run itself whose head a drawdown is measured from, each with its weight; none if that is the start, another
     * run or nothing. A mean of years is that of their months.
     */
    Map<Double, Double> reference() {
        Map<Double, Double> weights = new TreeMap<>();
        if (subject instanceof OfLimit of && of.limit().quantity() instanceof LimitedQuantity.Drawdown) {
            if (of.limit().comparison() instanceof Comparison.OnDay on) {
                weights.put(on.day(), 1.0);
            } else if (of.limit().comparison() instanceof Comparison.MeanOfYears mean) {
                int months =
                        (int) Math.max(1, Math.rint((mean.toDay() - mean.fromDay()) / RunCalendar.DAYS_PER_YEAR * 12));
                for (int month = 0; month <= months; month++) {
                    double share = (double) month / months;
                    double weight = (month == 0 || month == months ? 0.5 : 1) / months;
                    weights.put(mean.fromDay() + share * (mean.toDay() - mean.fromDay()), weight);
                }
            }
        }
        return weights;
    }

    /** By how much the limited value changes per metre of head on a day. */
    double perMetre(int day) {
        return perMetre[day];
    }

    /**
     * Metres of head that a unit is worth, by which amounts that limits give way are weighed against each other: of a pressure the
     * height of its column, of a rate of decline the fall over its years, of a share what takes a hundredth.
     */
    double metresOfUnit() {
        return Math.max(1, declineYears()) / Arrays.stream(perMetre).average().orElse(1);
    }

    /** Whose taking counts. */
    DrawdownByRates.Counted counted() {
        return counted;
    }

    double[] days() {
        return days;
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
