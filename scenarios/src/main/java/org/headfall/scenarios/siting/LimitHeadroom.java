package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.HeadProportion;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitMargins;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.ReferenceMoment;
import org.headfall.scenarios.recording.RunCalendar;

/**
 * What a run leaves of one limit while a new bore takes, on the few days that matter. Drawdown by a steady rate grows with
 * time, so a day counts only if every later one leaves more metres of it; a rate of decline grows most at first. More than
 * {@link #MOST_DAYS} days are gathered into groups, each with the fewest metres left and the largest drawdown.
 */
final class LimitHeadroom {

    private static final int MOST_DAYS = 24;

    private final Limit limit;
    private final double[] days;
    private final double[] margins;
    private final double[] perMetre;
    private final List<ReferenceMoment> reference;

    private LimitHeadroom(Limit limit, List<Day> kept) {
        this.limit = limit;
        days = kept.stream().mapToDouble(Day::day).toArray();
        margins = kept.stream().mapToDouble(Day::margin).toArray();
        perMetre = kept.stream().mapToDouble(Day::perMetre).toArray();
        reference = limit.quantity().measuresAnEffect() ? ReferenceMoment.of(limit.comparison()) : List.of();
    }

    /** What is left on a day, and how much of it a metre of drawdown takes. */
    private record Day(double day, double margin, double perMetre) {

        /** Drawdown that uses up what is left (m). */
        double metres() {
            return perMetre > 0 ? margin / perMetre : Double.POSITIVE_INFINITY;
        }
    }

    /**
     * Headroom of a limit.
     *
     * @param limit the limit
     * @param series its margins in the run at its station, of which the numerical error is kept free
     * @param shortest shortest time of taking for which effects are known (d)
     * @param last last day on which the new bore takes (d)
     */
    static LimitHeadroom of(Limit limit, LimitMargins series, double shortest, double last) {
        List<Day> all = new ArrayList<>();
        for (int i = 0; i < series.days().length; i++) {
            double day = series.days()[i];
            if (day > 0 && day <= last) {
                all.add(new Day(Math.max(shortest, day), series.margins()[i] - series.error(), series.perMetre()[i]));
            }
        }
        boolean grows = !(limit.quantity() instanceof LimitedQuantity.DeclineRate);
        return new LimitHeadroom(limit, grouped(grows ? fewestToCome(all) : all, grows));
    }

    /** Days on which fewer metres are left than on all later ones. */
    private static List<Day> fewestToCome(List<Day> all) {
        List<Day> kept = new ArrayList<>();
        double fewest = Double.POSITIVE_INFINITY;
        for (int i = all.size() - 1; i >= 0; i--) {
            if (all.get(i).metres() < fewest) {
                fewest = all.get(i).metres();
                kept.add(0, all.get(i));
            }
        }
        return kept;
    }

    private static List<Day> grouped(List<Day> all, boolean drawdownGrows) {
        if (all.size() <= MOST_DAYS) {
            return all;
        }
        List<Day> groups = new ArrayList<>();
        double first = Math.log(all.get(0).day());
        double width = (Math.log(all.get(all.size() - 1).day()) - first) / MOST_DAYS;
        int group = -1;
        for (Day one : all) {
            int own = width > 0 ? (int) Math.min(MOST_DAYS - 1, (Math.log(one.day()) - first) / width) : 0;
            if (own == group) {
                Day before = groups.remove(groups.size() - 1);
                Day tighter = one.metres() < before.metres() ? one : before;
                double day = drawdownGrows ? one.day() : before.day();
                groups.add(new Day(day, tighter.margin(), tighter.perMetre()));
            } else {
                groups.add(one);
                group = own;
            }
        }
        return groups;
    }

    /**
     * Why the taking of a holder's new bore, part of the proposal, cannot be counted for a limit, or need not be.
     *
     * @param limit the limit
     * @param holder holder of the new bores
     * @return the reason in words that go on after its name; absent if it is counted
     */
    static Optional<String> obstacle(Limit limit, String holder) {
        Optional<String> obstacle = HeadProportion.obstacleWhereSpringsFlow(limit);
        if (obstacle.isPresent() || !limit.needsOtherRun()) {
            return obstacle;
        }
        boolean ofOthers = limit.comparison() instanceof Comparison.WithoutBores
                || (limit.comparison() instanceof Comparison.WithoutHolder of
                        && !of.holder().equals(holder));
        return ofOthers
                ? Optional.of("counts the taking of " + limit.comparison().cause() + " only")
                : Optional.empty();
    }

    Limit limit() {
        return limit;
    }

    /** Days that matter, increasing. */
    double[] days() {
        return days;
    }

    /** Margin on a day beyond the numerical error of the limit, in its unit. */
    double margin(int day) {
        return margins[day];
    }

    /**
     * Effect on the limited value by a unit discharge, from responses of head.
     *
     * @param day which of the days
     * @param response response of head at the station after a time
     */
    double[] effect(int day, Response response) {
        double[] effect = response.after(days[day]).clone();
        for (ReferenceMoment moment : measuredFrom(day)) {
            double[] then = response.after(moment.day());
            Arrays.setAll(effect, cell -> effect[cell] - moment.weight() * then[cell]);
        }
        double factor = perMetreOfFall(day);
        Arrays.setAll(effect, cell -> factor * effect[cell]);
        return effect;
    }

    /**
     * Effect on the limited value by a unit discharge of one bore.
     *
     * @param day which of the days
     * @param drawdown drawdown per discharge at the station after a time (d/m²)
     */
    double effectOfOne(int day, DoubleUnaryOperator drawdown) {
        double effect = drawdown.applyAsDouble(days[day]);
        for (ReferenceMoment moment : measuredFrom(day)) {
            effect -= moment.weight() * drawdown.applyAsDouble(moment.day());
        }
        return perMetreOfFall(day) * effect;
    }

    /** Change of the limited value per metre of the fall that it is about, in its unit. */
    double perMetreOfFall(int day) {
        return perMetre[day] / years();
    }

    /** Years over which a rate of decline is a mean; 1 for values at a moment. */
    private int years() {
        return limit.quantity() instanceof LimitedQuantity.DeclineRate rate ? rate.overYears() : 1;
    }

    /**
     * Moments of the run itself that a value is measured from, which taking changes too: the beginning of the time of a rate of
     * decline, the day or the years that a drawdown is counted from.
     */
    List<ReferenceMoment> measuredFrom(int day) {
        if (limit.quantity() instanceof LimitedQuantity.DeclineRate rate) {
            double earlier = days[day] - rate.overYears() * RunCalendar.DAYS_PER_YEAR;
            return earlier > 0 ? List.of(new ReferenceMoment(earlier, 1)) : List.of();
        }
        return reference;
    }

    /** Response of head to a unit discharge in each cell. */
    interface Response {
        /** Drawdown per discharge of each cell after a time (d/m²). */
        double[] after(double time);
    }

    /** Takes from the headroom what a new bore uses up. */
    void use(int day, double amount) {
        margins[day] -= amount;
    }

    /** What it is, for tables. */
    String words() {
        return limit.nameAndPlace();
    }
}
