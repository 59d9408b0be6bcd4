package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.PointRules;

/**
 * Very many runs that differ in given rates, where no discharge follows head. Confined flow is linear, so heads and
 * discharges of all of them lie on a plane through a few: one run, and one more a rate that varies. Losses in bores, which
 * are not linear, are counted anew for each. Immutable; may be used by several threads.
 */
public final class LinearRuns {

    private final RunFromResponses base;
    private final RunSeries series;
    private final List<RunSeries> differences;
    private final PointRules rules;
    private final int steps;

    /**
     * Runs through some.
     *
     * @param base one run; it and the others are {@linkplain #hold linear}
     * @param others each with one rate changed
     */
    public LinearRuns(RunFromResponses base, List<RunFromResponses> others) {
        this.base = base;
        series = base.series();
        differences = others.stream().map(other -> difference(other.series())).toList();
        rules = new PointRules(base.plan().problem());
        steps = series.series().get(0).days().length;
    }

    /**
     * Whether a run is linear in its rates: no spring, every bore at a given rate without a lowest level, and no limit
     * that counts volumes, which leave out what is injected.
     *
     * @param plan the run
     */
    public static boolean hold(RunPlan plan) {
        boolean given = plan.problem().bores().stream()
                .flatMap(bore -> bore.phases().stream())
                .allMatch(phase -> isGiven(phase.operation()));
        return given
                && plan.problem().springs().isEmpty()
                && plan.limits().stream().noneMatch(limit -> limit.quantity() instanceof LimitedQuantity.Volume);
    }

    private static boolean isGiven(Operation operation) {
        return operation instanceof Operation.Off
                || (operation instanceof Operation.PumpedRate pumped
                        && pumped.lowestLevel().isEmpty());
    }

    private RunSeries difference(RunSeries other) {
        List<StationSeries> run = difference(other.series(), series.series());
        Map<Comparison, List<StationSeries>> others = new LinkedHashMap<>();
        other.others()
                .forEach((comparison, compared) -> others.put(
                        comparison, difference(compared, series.others().getOrDefault(comparison, List.of()))));
        return new RunSeries(run, others);
    }

    private static List<StationSeries> difference(List<StationSeries> of, List<StationSeries> from) {
        List<StationSeries> differences = new ArrayList<>();
        for (int station = 0; station < of.size(); station++) {
            StationSeries minuend = of.get(station);
            StationSeries subtrahend = from.get(station);
            differences.add(new StationSeries(
                    minuend.days(),
                    sum(minuend.head(), -1, subtrahend.head()),
                    minuend.levelInBore(),
                    sum(minuend.discharge(), -1, subtrahend.discharge()),
                    sum(minuend.wantedDischarge(), -1, subtrahend.wantedDischarge())));
        }
        return differences;
    }

    private static double[] sum(double[] first, double factor, double[] second) {
        double[] sum = first.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += factor * second[i];
        }
        return sum;
    }

    /**
     * A run.
     *
     * @param shares how far each rate is moved from that of the first run, as a share of how far it is moved in the run
     *     that changes it
     * @return the finished run, without grids, water balance, and anything by cause; empty if it is not as exact as is
     *     promised of answers from responses where all rates are given
     */
    public Optional<FinishedRun> at(double[] shares) {
        List<StationSeries> stations = withLevels(combined(series.series(), shares, RunSeries::series));
        OptionalDouble error = base.statedError(stations);
        if (error.isEmpty()) {
            return Optional.empty();
        }
        Map<Comparison, List<StationSeries>> compared = new LinkedHashMap<>();
        series.others()
                .forEach((comparison, of) -> compared.put(
                        comparison, combined(of, shares, other -> other.others().getOrDefault(comparison, List.of()))));
        return Optional.of(base.findings()
                .stations()
                .withoutCauses(new RunSeries(stations, compared), steps, error.getAsDouble()));
    }

    private List<StationSeries> combined(
            List<StationSeries> from, double[] shares, Function<RunSeries, List<StationSeries>> part) {
        List<StationSeries> sums = new ArrayList<>();
        for (int station = 0; station < from.size(); station++) {
            StationSeries first = from.get(station);
            double[] head = first.head().clone();
            double[] discharge = first.discharge().clone();
            double[] wanted = first.wantedDischarge().clone();
            for (int i = 0; i < shares.length; i++) {
                StationSeries difference = part.apply(differences.get(i)).get(station);
                add(head, shares[i], difference.head());
                add(discharge, shares[i], difference.discharge());
                add(wanted, shares[i], difference.wantedDischarge());
            }
            sums.add(new StationSeries(first.days(), head, first.levelInBore(), discharge, wanted));
        }
        return sums;
    }

    private static void add(double[] sum, double factor, double[] values) {
        for (int i = 0; i < sum.length; i++) {
            sum[i] += factor * values[i];
        }
    }

    private List<StationSeries> withLevels(List<StationSeries> stations) {
        List<StationSeries> complete = new ArrayList<>(stations);
        for (int bore = 0; bore < base.plan().problem().bores().size(); bore++) {
            StationSeries without = stations.get(bore);
            double[] level = new double[without.days().length];
            for (int day = 0; day < level.length; day++) {
                level[day] = rules.levelInBore(bore, without.head()[day], without.discharge()[day]);
            }
            complete.set(
                    bore,
                    new StationSeries(
                            without.days(), without.head(), level, without.discharge(), without.wantedDischarge()));
        }
        return complete;
    }
}
