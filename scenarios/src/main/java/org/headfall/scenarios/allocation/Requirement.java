package org.headfall.scenarios.allocation;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.ReferenceMoment;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.solver.bore.NeededHead;
import org.headfall.solver.bore.WellLoss;
import org.jspecify.annotations.Nullable;

/**
 * Something that rates must keep on some days: a limit at a place or on volumes, the lowest level in a bore, or
 * that a bore can bring up its rate.
 *
 * <p>{@code margin = base - effect - loss}, with the base what is left without the looked-for taking, the effect linear in
 * the rates, and the loss of the bore itself, or the head that it needs, if it is about a bore.
 */
final class Requirement {

    /** Head that weighs as much as all of an allowed volume (m): a drawdown limit of common size (common practice, no source). */
    private static final double METRES_OF_VOLUME = 10;

    private final Subject subject;
    private final int station;
    private final DrawdownByRates.Counted counted;
    private final double[] days;
    private final double[] perMetre;
    private final double[] base;
    private final String during;

    /** What must be kept. */
    sealed interface Subject permits OnLimit, OfLevel, OfLift {}

    /** A limit of the document. */
    sealed interface OnLimit extends Subject permits OfLimit, OfVolume, OfRate, LimitedFlow {

        /** The limit. */
        Limit limit();
    }

    /**
     * A limit of the document on something that follows head.
     *
     * @param limit the limit
     */
    record OfLimit(Limit limit) implements OnLimit {}

    /**
     * A limit of the document on volumes.
     *
     * @param limit the limit
     * @param parts the water years that it counts in, one for each day
     */
    record OfVolume(Limit limit, List<VolumeByRates.Part> parts) implements OnLimit {
        /** Copies the list. */
        OfVolume {
            parts = List.copyOf(parts);
        }
    }

    /**
     * A limit of the document on the flow of a bore whose rate is looked for: that it be given so much.
     *
     * @param limit the limit
     * @param bore its number among those looked for
     * @param metresOfUnit by how much the level in the bore falls for a unit of its rate (m per L/s), positive
     */
    record OfRate(Limit limit, int bore, double metresOfUnit) implements OnLimit {}

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
     * That a bore can bring up its rate.
     *
     * @param name the bore
     * @param bore its number among those looked for
     * @param needed head that it needs at its wall
     * @param largest largest rate for which that is known (m³/d)
     */
    record OfLift(String name, int bore, NeededHead needed, double largest) implements Subject {
        /** Head needed at the wall for a rate (m above datum). */
        double headFor(double rate) {
            return needed.at(known(rate));
        }

        /** Slope of that head (d/m²). */
        double slope(double rate) {
            return needed.slope(known(rate));
        }

        private double known(double rate) {
            return Math.max(0, Math.min(rate, largest));
        }
    }

    /**
     * What a bore loses, or needs more, by its own rate, beside what it does to the aquifer.
     *
     * @param bore its number among those looked for
     * @param at head for a rate (m for m³/d), 0 for none
     * @param slope its slope (d/m²)
     */
    record Own(int bore, DoubleUnaryOperator at, DoubleUnaryOperator slope) {}

    /**
     * A requirement of which nothing is left yet.
     *
     * @param subject what must be kept
     * @param station where, by its place in the run; -1 for volumes
     * @param counted whose taking counts
     * @param days when (d)
     * @param perMetre by how much its value changes per metre of head on each day
     */
    Requirement(Subject subject, int station, DrawdownByRates.Counted counted, double[] days, double[] perMetre) {
        this(subject, station, counted, days, perMetre, "");
    }

    private Requirement(
            Subject subject,
            int station,
            DrawdownByRates.Counted counted,
            double[] days,
            double[] perMetre,
            String during) {
        this.subject = subject;
        this.station = station;
        this.counted = counted;
        this.days = days;
        this.perMetre = perMetre;
        this.during = during;
        base = new double[days.length];
    }

    /** The same, of which nothing is left yet, with a stretch of time in its name: there are others that are called alike. */
    Requirement during(String stretch) {
        return new Requirement(subject, station, counted, days, perMetre, ", " + stretch);
    }

    /** A requirement whose value changes as head does. */
    Requirement(Subject subject, int station, DrawdownByRates.Counted counted, double[] days) {
        this(subject, station, counted, days, Arrays.stream(days).map(day -> 1).toArray());
    }

    Subject subject() {
        return subject;
    }

    /** What the bore that it is about loses or needs by its own rate, if it is about one. */
    Optional<Own> own() {
        if (subject instanceof OfLevel level) {
            return Optional.of(new Own(level.bore(), level.loss()::at, level.loss()::slope));
        }
        if (subject instanceof OfRate rate) {
            return Optional.of(new Own(
                    rate.bore(),
                    taken -> -DischargeUnit.LITRES_PER_SECOND.of(taken),
                    taken -> -DischargeUnit.LITRES_PER_SECOND.of(1)));
        }
        return subject instanceof OfLift lift
                ? Optional.of(new Own(lift.bore(), rate -> lift.headFor(rate) - lift.headFor(0), lift::slope))
                : Optional.empty();
    }

    /**
     * The day, from one number on and before another, on which effects leave least: the first of several.
     *
     * @param effects effect of rates on each of its days
     * @param from first number
     * @param to number after the last, larger
     */
    int tightest(double[] effects, int from, int to) {
        int tightest = from;
        for (int k = from + 1; k < to; k++) {
            if (base[k] - effects[k] < base[tightest] - effects[tightest]) {
                tightest = k;
            }
        }
        return tightest;
    }

    /** Whether it gives way where requirements contradict each other; what a pump lifts does not. */
    boolean mayGiveWay() {
        return !(subject instanceof OfLift);
    }

    /** The limit of the document that it is, if it is one. */
    Optional<Limit> limit() {
        return subject instanceof OnLimit of ? Optional.of(of.limit()) : Optional.empty();
    }

    private Optional<LimitedQuantity> quantity() {
        return limit().map(Limit::quantity);
    }

    String name() {
        return nameAtAllTimes() + during;
    }

    private String nameAtAllTimes() {
        if (subject instanceof OfLevel level) {
            return "lowest level (" + level.name() + ")";
        }
        return subject instanceof OfLift lift
                ? "what the bore can bring up (" + lift.name() + ")"
                : limit().orElseThrow().nameAndPlace();
    }

    /** Names of the bores, springs and points that it is about. */
    List<String> places() {
        if (subject instanceof OfLevel level) {
            return List.of(level.name());
        }
        if (subject instanceof OfLift lift) {
            return List.of(lift.name());
        }
        LimitPlace place = limit().orElseThrow().place();
        return place instanceof LimitPlace.Together some ? some.bores() : List.of(place.words());
    }

    /** What it means that it counts on no day. */
    String wordsIfOnNoDay() {
        if (subject instanceof OfLift lift) {
            return String.format(
                    Locale.ROOT,
                    "gives no water at all: its %s takes a head of %.2f m above datum at the bore to begin with, more than"
                            + " there is even while all bores that share rest",
                    Double.isFinite(lift.largest()) ? "pump" : "outlet",
                    lift.headFor(0));
        }
        return "counts on no day";
    }

    /** How much of a volume meters count on a day, in words; empty if nothing. */
    String wordsOnMeters(int day) {
        double metered = subject instanceof OfVolume of ? of.parts().get(day).metered() : 0;
        return metered > 0
                ? String.format(
                        Locale.ROOT,
                        "meters count %.2f ML of the %.2f ML in the water year in which least is left, whatever the rates",
                        metered,
                        allowed())
                : "";
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
                : quantity().map(LimitedQuantity::allowed).orElse(0.0);
    }

    /** What would have to be allowed if it gave way by an amount. */
    double allowedAfter(double amount) {
        boolean fromBelow = quantity().map(LimitedQuantity::limitsFromBelow).orElse(true);
        // Springs and bores give nothing at the least, however far head has to fall below their outlets.
        @Nullable LimitedQuantity limited = quantity().orElse(null);
        double least = limited instanceof LimitedQuantity.SpringDischarge || limited instanceof LimitedQuantity.Flow
                ? 0
                : Double.NEGATIVE_INFINITY;
        return fromBelow ? Math.max(least, allowed() - amount) : allowed() + amount;
    }

    /** What is left of it in its unit, by what its base and effects leave: the same, but of the flow of a bore. */
    double left(double margin) {
        return subject instanceof LimitedFlow flow ? flow.left(margin) : margin;
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
     * run or nothing ({@link ReferenceMoment}).
     */
    Map<Double, Double> reference() {
        Map<Double, Double> weights = new TreeMap<>();
        if (subject instanceof OfLimit of && of.limit().quantity() instanceof LimitedQuantity.Drawdown) {
            ReferenceMoment.of(of.limit().comparison()).forEach(moment -> weights.put(moment.day(), moment.weight()));
        }
        return weights;
    }

    /** By how much the limited value changes per metre of head on a day. */
    double perMetre(int day) {
        return perMetre[day];
    }

    /**
     * Metres of head that a unit is worth, by which amounts that limits give way are weighed against each other: of a pressure the
     * height of its column, of a rate of decline the fall over its years, of a share what takes a hundredth,
     * of the discharge of a spring the fall that takes it away, of the flow of a bore the fall of the level in it by that flow, of volumes the part of what is allowed of {@value #METRES_OF_VOLUME} m.
     */
    double metresOfUnit() {
        if (subject instanceof OfVolume of) {
            return METRES_OF_VOLUME / of.limit().quantity().scaleOfMargin();
        }
        if (subject instanceof OfRate of) {
            return of.metresOfUnit();
        }
        double mean = Arrays.stream(perMetre).average().orElse(1);
        return Math.max(1, declineYears()) / (mean > 0 ? mean : 1);
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
