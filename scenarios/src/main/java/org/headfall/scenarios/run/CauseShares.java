package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.headfall.scenarios.limits.CauseShare;
import org.headfall.scenarios.limits.CauseSplit;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LeftOut;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.response.Interference;
import org.headfall.solver.response.UnitResponses;

/**
 * Which cause does how much to head at the place of a limit on the day of its worst value. Where a limit compares with
 * the run without some bores, the shares are what each of these bores takes away, and what springs and bores that follow
 * head give back for it; otherwise what each bore and spring has done since the start of the run, or since the day that the
 * limit compares with. Shares of a rate of decline are those of the fall of head in its years, a year.
 */
final class CauseShares {

    /** Smallest share that is worth a word (m): half a millimetre. */
    private static final double NOTHING = 5e-4;

    private final RunDescription description;
    private final UnitResponses responses;
    private final RateHistory history;
    private final double[] startRates;
    private final RunSeries run;

    /**
     * Shares of a run.
     *
     * @param description the run
     * @param responses responses of its problem
     * @param history what its bores and springs discharged
     * @param startRates what they discharged at the start (m³/d)
     * @param run what it recorded, with the runs that limits compare it with
     */
    CauseShares(
            RunDescription description,
            UnitResponses responses,
            RateHistory history,
            double[] startRates,
            RunSeries run) {
        this.description = description;
        this.responses = responses;
        this.history = history;
        this.startRates = startRates.clone();
        this.run = run;
    }

    /** The results with their shares, where {@link CauseSplit} makes one. */
    List<LimitResult> with(List<LimitResult> results) {
        Map<Comparison, TreeSet<Double>> days = new HashMap<>();
        for (LimitResult result : results) {
            moments(result)
                    .forEach(day -> days.computeIfAbsent(split(result.limit()), one -> new TreeSet<>())
                            .add(day));
        }
        Map<Comparison, Map<Double, double[][]>> drawdowns = new HashMap<>();
        days.forEach((split, on) -> drawdowns.put(split, drawdown(split, on)));
        return results.stream()
                .map(result -> {
                    List<Double> moments = moments(result);
                    return moments.isEmpty()
                            ? result
                            : new LimitResult(
                                    result.limit(), result.outcome(), shares(result.limit(), moments, drawdowns));
                })
                .toList();
    }

    /** The day from which the split counts, and that of the worst value; none if there is no split. */
    private List<Double> moments(LimitResult result) {
        Limit limit = result.limit();
        CauseSplit split = CauseSplit.of(result, description.endDay());
        if (!split.isMade()) {
            return List.of();
        }
        double day = result.outcome().worstIfAny().orElseThrow().day();
        double from = 0;
        if (limit.quantity() instanceof LimitedQuantity.DeclineRate rate) {
            from = Math.max(0, description.calendar().yearsAfter(day, -rate.overYears()));
        } else if (split == CauseSplit.SINCE_A_DAY && limit.comparison() instanceof Comparison.OnDay on) {
            from = on.day();
        }
        return List.of(from, day);
    }

    private static boolean leavesOut(Limit limit) {
        return LeftOut.any(limit.comparison()) && limit.needsOtherRun();
    }

    private static Comparison split(Limit limit) {
        return leavesOut(limit) ? limit.comparison() : new Comparison.Start();
    }

    /** A bore that is left out takes all of its discharge away, not only what it takes more than at the start. */
    private Map<Double, double[][]> drawdown(Comparison split, Set<Double> days) {
        double[] rates = startRates.clone();
        if (LeftOut.any(split)) {
            LeftOut.bores(description, split).stream().forEach(i -> rates[i] = 0);
        }
        double[] on = days.stream().mapToDouble(Double::doubleValue).toArray();
        double[][][] drawdown = new Interference(responses, history, rates).drawdown(on);
        Map<Double, double[][]> byDay = new HashMap<>();
        for (int i = 0; i < on.length; i++) {
            byDay.put(on[i], drawdown[i]);
        }
        return byDay;
    }

    private List<CauseShare> shares(
            Limit limit, List<Double> moments, Map<Comparison, Map<Double, double[][]>> drawdowns) {
        int station = description.stationIndex(limit.station());
        double from = moments.get(0);
        double day = moments.get(1);
        boolean rate = limit.quantity() instanceof LimitedQuantity.DeclineRate;
        double years = rate ? (day - from) / RunCalendar.DAYS_PER_YEAR : 1;
        Map<Double, double[][]> byDay = Objects.requireNonNull(drawdowns.get(split(limit)));
        double[] atFrom = Objects.requireNonNull(byDay.get(from))[station];
        double[] atDay = Objects.requireNonNull(byDay.get(day))[station];
        boolean leftOut = leavesOut(limit);
        BitSet causes = leftOut ? LeftOut.bores(description, limit.comparison()) : all();
        List<CauseShare> shares = new ArrayList<>();
        double rest = (drawdown(limit, station, day) - drawdown(limit, station, from)) / years;
        for (int i = causes.nextSetBit(0); i >= 0; i = causes.nextSetBit(i + 1)) {
            double share = (atDay[i] - atFrom[i]) / years;
            if (Math.abs(share) >= NOTHING) {
                rest -= share;
                shares.add(new CauseShare(description.stations().get(i).name(), share));
            }
        }
        shares.sort(Comparator.comparingDouble(CauseShare::drawdown).reversed());
        if (Math.abs(rest) >= NOTHING) {
            shares.add(new CauseShare(leftOut ? "springs and bores that follow head" : "everything else", rest));
        }
        return shares;
    }

    private BitSet all() {
        BitSet all = new BitSet();
        all.set(0, history.points());
        return all;
    }

    /** What is split (m): head without some bores less head, or fall of head since the start. */
    private double drawdown(Limit limit, int station, double day) {
        StationSeries series = run.series().get(station);
        return leavesOut(limit)
                ? Objects.requireNonNull(run.others().get(limit.comparison()))
                                .get(station)
                                .headAt(day)
                        - series.headAt(day)
                : series.head()[0] - series.headAt(day);
    }
}
