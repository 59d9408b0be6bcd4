package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.headfall.scenarios.limits.ReferenceMoment;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.response.EffectFields;

/**
 * One limit: what is left of it, what a bore in any cell or one bore takes of it, and what those that were chosen have taken.
 *
 * <p>Effects add up as long as what springs and bores give less goes straight by head. What bends is counted beside that: each
 * place loses more or less by the straight fall of head there, by all new bores together, and that raises or lowers head at
 * the limited place ({@link BentRule}).
 */
final class CountedLimit {

    private static final int MOST_EVALUATIONS = 200;
    private static final double RELATIVE = 1e-9;

    /** Parts of the range of rates that are looked at one after another for the first that takes all that is left. */
    private static final int PARTS = 16;

    /** Moments of a reference of which bends are counted: they change slowly. */
    private static final int MOST_MOMENTS = 8;

    private final LimitHeadroom headroom;
    private final EffectFields fields;
    private final int receptor;
    private final int reason;
    private final List<BentDay> bent = new ArrayList<>();
    private final double[] straight;
    private final double[][] falls;
    private final double[] changes;

    /**
     * A limit.
     *
     * @param headroom what is left of it
     * @param fields effects on its place and on those whose rules matter there
     * @param receptor number of its place in these
     * @param reason number of its name, see {@link Ruling}
     * @param rules rules that matter at its place
     */
    CountedLimit(LimitHeadroom headroom, EffectFields fields, int receptor, int reason, List<BentRule> rules) {
        this.headroom = headroom;
        this.fields = fields;
        this.receptor = receptor;
        this.reason = reason;
        int days = headroom.days().length;
        straight = new double[days];
        falls = new double[days][];
        changes = new double[days];
        for (int day = 0; day < days; day++) {
            List<ReferenceMoment> moments = new ArrayList<>(few(headroom.measuredFrom(day)));
            moments.add(new ReferenceMoment(headroom.days()[day], -1));
            bent.add(new BentDay(moments, rules, receptor, headroom.perMetreOfFall(day)));
            falls[day] = new double[bent.get(day).size()];
        }
    }

    /** The same weight at fewer moments, each in the middle of some. */
    private static List<ReferenceMoment> few(List<ReferenceMoment> moments) {
        if (moments.size() <= MOST_MOMENTS) {
            return moments;
        }
        List<ReferenceMoment> few = new ArrayList<>();
        for (int group = 0; group < MOST_MOMENTS; group++) {
            List<ReferenceMoment> some =
                    moments.subList(group * moments.size() / MOST_MOMENTS, (group + 1) * moments.size() / MOST_MOMENTS);
            double weight = some.stream().mapToDouble(ReferenceMoment::weight).sum();
            double day =
                    some.stream().mapToDouble(one -> one.weight() * one.day()).sum() / weight;
            few.add(new ReferenceMoment(day, weight));
        }
        return few;
    }

    LimitHeadroom headroom() {
        return headroom;
    }

    int reason() {
        return reason;
    }

    /** Lowers the largest rate of each cell to what the limit leaves. */
    void lower(RateBounds bounds) {
        for (int day = 0; day < headroom.days().length; day++) {
            // Days are late enough for what fields know well. A moment that a value is measured from may be
            // earlier: the response of a later day would take too much away.
            double[] effect = headroom.effect(day, time -> fields.after(receptor, time));
            BentDay ofDay = bent.get(day);
            double[][] fallsOfOne = new double[ofDay.size()][];
            Arrays.setAll(fallsOfOne, fall -> fields.after(ofDay.receptor(fall), ofDay.moment(fall)));
            double[] unit = new double[ofDay.size()];
            for (int cell = 0; cell < effect.length; cell++) {
                for (int fall = 0; fall < unit.length; fall++) {
                    unit[fall] = fallsOfOne[fall][cell];
                }
                bounds.lower(cell, most(day, bounds.rate()[cell], effect[cell], unit), reason);
            }
        }
    }

    /** The largest rate of one bore that the limit leaves, by its own near field; no more than another bound (m³/d). */
    double most(NearField bore, double otherwise) {
        double most = otherwise;
        for (int day = 0; day < headroom.days().length; day++) {
            most = Math.min(most, Math.max(0, most(day, most, effectOf(bore, day), unitFalls(bore, day))));
        }
        return most;
    }

    private double effectOf(NearField bore, int day) {
        return headroom.effectOfOne(day, time -> fields.by(receptor, bore, time));
    }

    private double[] unitFalls(NearField bore, int day) {
        BentDay ofDay = bent.get(day);
        double[] unit = new double[ofDay.size()];
        Arrays.setAll(unit, fall -> fields.by(ofDay.receptor(fall), bore, ofDay.moment(fall)));
        return unit;
    }

    /**
     * The least rate that uses up what is left on a day.
     *
     * @param day which of the days
     * @param otherwise largest rate that is of interest (m³/d)
     * @param effect effect of a unit discharge by straight rules, in the unit of the limit
     * @param unit each fall that bent rules go by, by a unit discharge (d/m²)
     * @return the rate (m³/d), infinite if more than the one of interest is left
     */
    private double most(int day, double otherwise, double effect, double[] unit) {
        double left = headroom.margin(day);
        if (unit.length == 0) {
            return effect > 0 ? left / effect : Double.POSITIVE_INFINITY;
        }
        if (left <= 0) {
            return taken(day, otherwise, effect, unit) > 0 ? 0 : Double.POSITIVE_INFINITY;
        }
        // A fall since a moment grows less and less with the rate, or shrinks, until a bore that flows less stops.
        int parts = headroom.measuredFrom(day).isEmpty() ? 1 : PARTS;
        for (int part = 1; part <= parts; part++) {
            double to = otherwise * part / parts;
            if (taken(day, to, effect, unit) > left) {
                return new BrentSolver(RELATIVE, RELATIVE * otherwise)
                        .solve(
                                MOST_EVALUATIONS,
                                rate -> taken(day, rate, effect, unit) - left,
                                otherwise * (part - 1) / parts,
                                to);
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    /** What one more bore takes beside those that were chosen. */
    private double taken(int day, double rate, double effect, double[] unit) {
        return rate * effect + bent.get(day).change(with(day, rate, unit)) - changes[day];
    }

    /** Falls by straight rules of one more bore and those that were chosen (m). */
    private double[] with(int day, double rate, double[] unit) {
        double[] with = falls[day].clone();
        for (int fall = 0; fall < with.length; fall++) {
            with[fall] += rate * unit[fall];
        }
        return with;
    }

    /** Counts a bore: it uses up a part. */
    void use(NearField bore, double rate) {
        for (int day = 0; day < headroom.days().length; day++) {
            double effect = effectOf(bore, day);
            falls[day] = with(day, rate, unitFalls(bore, day));
            double change = bent.get(day).change(falls[day]);
            headroom.use(day, rate * effect + change - changes[day]);
            straight[day] += rate * effect;
            changes[day] = change;
        }
    }

    /** What to say where what places lose had not settled when the search for it ended. */
    Optional<String> caution() {
        double unsettled = bent.stream().mapToDouble(BentDay::unsettled).max().orElse(0);
        return unsettled == 0
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "Effects on '%s' may be off: what springs and bores there give less still moved by %.2g %% when the"
                                + " search for it ended.",
                        headroom.words(),
                        100 * unsettled));
    }

    /** What a bore that was chosen takes on the day on which least is left, sharing what bends with the others. */
    Stream<Site.Effect> effect(NearField bore, double rate) {
        int tightest = -1;
        for (int day = 0; day < headroom.days().length; day++) {
            if (tightest < 0 || headroom.margin(day) < headroom.margin(tightest)) {
                tightest = day;
            }
        }
        if (tightest < 0) {
            return Stream.empty();
        }
        double share = straight[tightest] > 0 ? 1 + changes[tightest] / straight[tightest] : 1;
        return Stream.of(new Site.Effect(
                headroom.words(),
                headroom.limit().quantity().unit(),
                headroom.days()[tightest],
                rate * effectOf(bore, tightest) * share,
                headroom.margin(tightest)));
    }
}
