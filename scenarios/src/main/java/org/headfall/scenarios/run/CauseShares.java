package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.headfall.scenarios.limits.CauseShare;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LeftOut;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.response.Interference;
import org.headfall.solver.response.UnitResponses;

/**
 * Which cause does how much to head at the place of a limit on the day of its worst value. Where a limit compares with
 * the run without some bores, the shares are what each of these bores takes away, and what springs and bores that follow
 * head give back for it; otherwise what each bore and spring has done since the start of the run.
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

    /** The results with their shares, where the place is a station whose head tells and the day lies within the run. */
    List<LimitResult> with(List<LimitResult> results) {
        Map<Comparison, TreeSet<Double>> days = new HashMap<>();
        for (LimitResult result : results) {
            dayOf(result)
                    .ifPresent(day -> days.computeIfAbsent(split(result.limit()), one -> new TreeSet<>())
                            .add(day));
        }
        Map<Comparison, Map<Double, double[][]>> drawdowns = new HashMap<>();
        days.forEach((split, on) -> drawdowns.put(split, drawdown(split, on)));
        return results.stream()
                .map(result -> {
                    Optional<Double> day = dayOf(result);
                    return day.isEmpty()
                            ? result
                            : new LimitResult(
                                    result.limit(), result.outcome(), shares(result.limit(), day.get(), drawdowns));
                })
                .toList();
    }

    /** The day of the worst value, if head at the place on that day can be split. */
    private Optional<Double> dayOf(LimitResult result) {
        Limit limit = result.limit();
        boolean ofHead = limit.place() instanceof LimitPlace.AtStation
                && !(limit.quantity() instanceof LimitedQuantity.Volume)
                && !(limit.quantity() instanceof LimitedQuantity.Distance);
        return result.outcome()
                .worstIfAny()
                .map(Outcome.Worst::day)
                .filter(day -> ofHead && day <= description.endDay());
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

    private List<CauseShare> shares(Limit limit, double day, Map<Comparison, Map<Double, double[][]>> drawdowns) {
        int station = description.stationIndex(limit.station());
        double[] byCause = Objects.requireNonNull(
                Objects.requireNonNull(drawdowns.get(split(limit))).get(day))[station];
        boolean leftOut = leavesOut(limit);
        BitSet causes = leftOut ? LeftOut.bores(description, limit.comparison()) : all();
        List<CauseShare> shares = new ArrayList<>();
        double rest = leftOut ? effect(limit, station, day) : sinceStart(station, day);
        for (int i = causes.nextSetBit(0); i >= 0; i = causes.nextSetBit(i + 1)) {
            rest -= byCause[i];
            if (Math.abs(byCause[i]) >= NOTHING) {
                shares.add(new CauseShare(description.stations().get(i).name(), byCause[i]));
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

    private double effect(Limit limit, int station, double day) {
        StationSeries without =
                Objects.requireNonNull(run.others().get(limit.comparison())).get(station);
        return without.headAt(day) - run.series().get(station).headAt(day);
    }

    private double sinceStart(int station, double day) {
        StationSeries series = run.series().get(station);
        return series.head()[0] - series.headAt(day);
    }
}
