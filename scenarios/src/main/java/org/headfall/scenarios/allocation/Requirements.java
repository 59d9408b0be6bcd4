package org.headfall.scenarios.allocation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.HeadProportion;
import org.headfall.scenarios.limits.LeftOut;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitMargins;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.VolumeAccount;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.quantity.VolumeUnit;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.solver.bore.Bore;

/** All that rates must keep: limits that follow head in proportion, those on volumes and springs, the lowest levels of the bores, and what they can bring up. */
final class Requirements {

    /** By how much rates may pass what is kept free: with the numerical error alone left, a limit still holds. */
    static final double TOLERATED = 5e-4;

    /** Days that are nearer to each other than this count as one (d). */
    static final double SAME_DAY = 1;

    private final List<Requirement> all;
    private final double[] most;

    private Requirements(List<Requirement> all, double[] most) {
        this.all = all;
        this.most = most;
    }

    /**
     * Requirements of a document, with what is left of them without the bores that share.
     *
     * @param plan its plan
     * @param scenario the document
     * @param variables the rates of the bores that share
     * @param without the run without these bores, whose days are looked at
     */
    static Requirements of(RunPlan plan, Scenario scenario, RateVariables variables, RunInMemory without) {
        int[] bores = variables.stations();
        RateBlocks blocks = variables.blocks();
        List<Requirement> all = new ArrayList<>();
        double[] takingDays = Arrays.stream(without.recording().days())
                .filter(day -> blocks.at(day) != null)
                .toArray();
        for (Limit limit : plan.limits()) {
            if (obstacle(limit, without).isPresent()) {
                continue;
            }
            if (limit.quantity() instanceof LimitedQuantity.Volume volume) {
                all.add(ofVolume(plan.description(), limit, volume, bores));
            } else if (limit.quantity() instanceof LimitedQuantity.Flow) {
                all.addAll(new FlowLimits(plan, variables, without).of(limit));
            } else {
                all.add(ofLimit(plan.description(), limit, bores, without));
            }
        }
        for (int b = 0; b < bores.length; b++) {
            double floor = floor(scenario.bores().get(bores[b]));
            if (Double.isFinite(floor)) {
                all.add(ofLevel(plan, variables, b, floor, takingDays));
            }
        }
        Lifts lifts = new Lifts(plan, variables, takingDays, without);
        all.addAll(lifts.requirements());
        Requirements requirements =
                new Requirements(toldApart(all, plan.description().calendar()), lifts.most());
        requirements.setBases(requirements.safeMargins(without));
        return requirements;
    }

    /** With the dates of those that are called alike, as what a bore brings up by one pump after another. */
    private static List<Requirement> toldApart(List<Requirement> all, RunCalendar calendar) {
        List<String> names = all.stream().map(Requirement::name).toList();
        return all.stream()
                .map(one -> Collections.frequency(names, one.name()) > 1 && one.days().length > 0
                        ? one.during(date(calendar, one.days()[0]) + " to "
                                + date(calendar, one.days()[one.days().length - 1]))
                        : one)
                .toList();
    }

    private static LocalDate date(RunCalendar calendar, double day) {
        return calendar.at(day).toLocalDate();
    }

    /**
     * Why a limit cannot be kept by rates that are found by adding up.
     *
     * @param limit the limit
     * @param run any run of the same stations
     * @return the reason in words that go on after its name; absent if it is kept
     */
    static Optional<String> obstacle(Limit limit, RunInMemory run) {
        boolean counts =
                limit.quantity() instanceof LimitedQuantity.Volume && !(limit.place() instanceof LimitPlace.OnMap);
        Optional<String> ofKind =
                counts ? Optional.empty() : HeadProportion.obstacleWhereWaterFlowsBesideKnownCases(limit);
        if (ofKind.isEmpty() && HeadProportion.isBesideCase(limit) && !run.isBeside(limit.comparison())) {
            return Optional.of("compares with another case in which bores that share take as well");
        }
        return ofKind.isPresent()
                ? ofKind
                : run.obstacle(limit).map(reason -> "cannot be judged: " + reason.replaceFirst("\\.$", ""));
    }

    private static double floor(BoreSpecification bore) {
        return bore.levels().pumpingFloor().orElse(Double.NEGATIVE_INFINITY);
    }

    private static Requirement ofLimit(RunDescription run, Limit limit, int[] bores, RunInMemory without) {
        LimitMargins margins = without.margins(limit);
        int[] counting = IntStream.range(0, margins.days().length)
                .filter(i -> margins.days()[i] > 0)
                .toArray();
        return new Requirement(
                new Requirement.OfLimit(limit),
                run.stationIndex(limit.station()),
                counted(run, limit, bores),
                Arrays.stream(counting).mapToDouble(i -> margins.days()[i]).toArray(),
                Arrays.stream(counting).mapToDouble(i -> margins.perMetre()[i]).toArray());
    }

    private static Requirement ofVolume(RunDescription run, Limit limit, LimitedQuantity.Volume volume, int[] bores) {
        List<VolumeByRates.Part> parts = new VolumeAccount(run, limit.place(), volume)
                .parts(limit.period(), run.endDay()).stream()
                        .map(part -> new VolumeByRates.Part(
                                part.fromDay(),
                                part.toDay(),
                                numbers(run, part.bores(), bores),
                                VolumeUnit.MEGALITRES.of(part.metered())))
                        .toList();
        return new Requirement(
                new Requirement.OfVolume(limit, parts),
                -1,
                new DrawdownByRates.Counted(new BitSet(), Optional.empty()),
                parts.stream().mapToDouble(VolumeByRates.Part::toDay).toArray());
    }

    /** Numbers of some bores among those that share. */
    private static BitSet numbers(RunDescription run, List<String> names, int[] bores) {
        BitSet numbers = new BitSet();
        for (int b = 0; b < bores.length; b++) {
            numbers.set(b, names.contains(run.stations().get(bores[b]).name()));
        }
        return numbers;
    }

    private static Requirement ofLevel(RunPlan plan, RateVariables variables, int b, double floor, double[] days) {
        Bore bore = plan.problem().bores().get(variables.station(b));
        return new Requirement(
                new Requirement.OfLevel(bore.name(), b, floor, plan.problem().lossIn(bore)),
                variables.station(b),
                variables.everyone(),
                days);
    }

    /** Which of the bores a limit counts: those that it is compared without, and all if it is about head itself. */
    private static DrawdownByRates.Counted counted(RunDescription run, Limit limit, int[] bores) {
        BitSet leftOut = LeftOut.bores(run, limit.comparison());
        BitSet counted = new BitSet();
        for (int b = 0; b < bores.length; b++) {
            counted.set(b, !limit.needsOtherRun() || leftOut.get(bores[b]));
        }
        boolean all = counted.cardinality() == bores.length;
        return new DrawdownByRates.Counted(counted, all ? Optional.empty() : Optional.of(limit.comparison()));
    }

    /**
     * Days on which limits begin or end while the run goes on.
     *
     * @param firstDay first day on which anything is looked at (d)
     * @param endDay end of the run (d)
     * @return the days, increasing (d)
     */
    double[] turns(double firstDay, double endDay) {
        return all.stream()
                .filter(one -> one.subject() instanceof Requirement.OfLimit && one.days().length > 0)
                .flatMapToDouble(one -> DoubleStream.of(one.days()[0], one.days()[one.days().length - 1]))
                .filter(day -> day > firstDay && day < endDay - SAME_DAY)
                .sorted()
                .distinct()
                .toArray();
    }

    /** Most that each bore can ever bring up in each group of blocks, bore by bore (m³/d); infinite where nothing bounds it. */
    double[] most() {
        return most.clone();
    }

    List<Requirement> all() {
        return all;
    }

    /**
     * What a run leaves of each requirement on each of its days, in its unit, beyond the numerical error of a limit and
     * {@link #TOLERATED}: a limit of which less than the error is left stays undecided in a run with the same rates.
     */
    double[][] safeMargins(RunInMemory with) {
        double[][] margins = margins(with);
        for (int r = 0; r < margins.length; r++) {
            double reserve = reserve(with, all.get(r));
            for (int k = 0; k < margins[r].length; k++) {
                margins[r][k] -= reserve;
            }
        }
        return margins;
    }

    /** What is kept free of a requirement (in its unit); nothing of a level in a bore, which is no limit. */
    double reserve(RunInMemory with, Requirement one) {
        return one.limit().map(limit -> with.margins(limit).error() + TOLERATED).orElse(0.0);
    }

    /** What a run leaves of each requirement on each of its days. */
    double[][] margins(RunInMemory with) {
        return all.stream().map(one -> margins(with, one)).toArray(double[][]::new);
    }

    private static double[] margins(RunInMemory with, Requirement one) {
        double[] days;
        double[] values;
        if (one.own().isPresent() || one.subject() instanceof LimitedFlow) {
            StationSeries series = with.recording().series().get(one.station());
            days = series.days();
            values = new double[days.length];
            Arrays.setAll(values, i -> ofBore(one, series, i));
        } else {
            Limit limit = one.limit().orElseThrow();
            LimitMargins margins = with.margins(limit);
            days = margins.days();
            values = limit.quantity() instanceof LimitedQuantity.SpringDischarge
                            || limit.quantity() instanceof LimitedQuantity.ShareOfSpringDischarge
                    ? withLackOfHead(with, one, margins)
                    : margins.margins();
        }
        return Arrays.stream(one.days())
                .map(day -> StationSeries.interpolate(days, values, day))
                .toArray();
    }

    private static double ofBore(Requirement one, StationSeries series, int i) {
        if (one.subject() instanceof LimitedFlow flow) {
            return flow.margin(series.head()[i], series.discharge()[i]);
        }
        if (one.subject() instanceof Requirement.OfRate) {
            return DischargeUnit.LITRES_PER_SECOND.of(series.discharge()[i]) - one.allowed();
        }
        return one.subject() instanceof Requirement.OfLift lift
                ? series.head()[i] - lift.headFor(series.discharge()[i])
                : series.levelInBore()[i] - one.allowed();
    }

    /** A spring that is dry lacks the more of its discharge the deeper head lies below its outlet. */
    private static double[] withLackOfHead(RunInMemory with, Requirement one, LimitMargins margins) {
        double outlet = with.plan()
                .description()
                .stations()
                .get(one.station())
                .outletLevel()
                .orElseThrow();
        StationSeries series = with.recording().series().get(one.station());
        double[] values = margins.margins().clone();
        for (int k = 0; k < values.length; k++) {
            values[k] += margins.perMetre()[k] * Math.min(0, series.headAt(margins.days()[k]) - outlet);
        }
        return values;
    }

    /** Largest difference of what two runs leave on any day, over the requirements of each unit. */
    List<AllocationResult.Difference> differences(RunInMemory one, RunInMemory other) {
        return differences(all.stream().map(Requirement::unitOfChange).toList(), margins(one), margins(other));
    }

    /**
     * Largest difference within each unit: metres and cubic metres are not to be compared with each other.
     *
     * @param units unit of each requirement
     * @param one {@code [requirement][day]} what is left, in its unit
     * @param other the same of another run
     * @return one for each unit, in the order in which units occur first
     */
    static List<AllocationResult.Difference> differences(List<String> units, double[][] one, double[][] other) {
        Map<String, Double> largest = new LinkedHashMap<>();
        for (int r = 0; r < one.length; r++) {
            for (int k = 0; k < one[r].length; k++) {
                largest.merge(units.get(r), Math.abs(one[r][k] - other[r][k]), Math::max);
            }
        }
        return largest.entrySet().stream()
                .map(entry -> new AllocationResult.Difference(entry.getKey(), entry.getValue()))
                .toList();
    }

    /**
     * Names of the requirements of which a run leaves less on some day than what is kept free for their numerical errors.
     *
     * @param with the run
     * @param relaxed by how much each requirement gives way, in its unit
     * @return the names, in the order of the requirements; none if all are kept
     */
    List<String> notKept(RunInMemory with, double[] relaxed) {
        double[][] margins = safeMargins(with);
        return IntStream.range(0, margins.length)
                .filter(r -> Arrays.stream(margins[r]).anyMatch(margin -> !(margin + relaxed[r] >= -TOLERATED)))
                .mapToObj(r -> all.get(r).name())
                .toList();
    }

    /** Sets what is left without the bores. */
    void setBases(double[][] bases) {
        for (int r = 0; r < bases.length; r++) {
            for (int k = 0; k < bases[r].length; k++) {
                all.get(r).setBase(k, bases[r][k]);
            }
        }
    }
}
