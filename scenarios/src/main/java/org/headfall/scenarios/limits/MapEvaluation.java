package org.headfall.scenarios.limits;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.spatial.Position;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Judges a limit on all cells of a part of the map, on the days on which heads of the grid were kept. Between these days
 * nothing is known, so the first day beyond the limit is one of them, and the kept day before it is named. Heads are those
 * of cells: close to a bore they stand above the head at its wall. Changed runs count by what they do to the limited value
 * in any cell of the part.
 */
final class MapEvaluation {

    private static final double SQUARE_METRES_PER_SQUARE_KILOMETRE = 1e6;
    private static final double PER_CENT = 100;

    private final RunDescription description;
    private final MapSeries series;
    private final List<ChangedRun> changedRuns;
    private final MapPlaces.Part part;

    MapEvaluation(RunDescription description, MapSeries series, List<ChangedRun> changedRuns, MapPlaces.Part part) {
        this.description = description;
        this.series = series;
        this.changedRuns = List.copyOf(changedRuns);
        this.part = part;
    }

    /** What one day has to show. */
    private record DayWorst(double day, int cell, double value, double margin, double areaBeyond) {}

    Outcome outcome(Limit limit) {
        if (limit.needsOtherRun() && !series.others().containsKey(limit.comparison())) {
            return new Outcome.NotEvaluated("For comparison it needs "
                    + limit.comparison().words() + ", of which no heads of cells were kept.");
        }
        OptionalDouble reference = referenceDay(limit.comparison());
        if (reference.isPresent() && gridOn(reference.getAsDouble()) < 0) {
            return new Outcome.NotEvaluated(
                    "No heads of cells were kept of " + limit.comparison().words() + ", with which it compares.");
        }
        List<DayWorst> days = IntStream.range(0, series.grids().size())
                .filter(i -> counts(limit, series.grids().get(i).day()))
                .mapToObj(i -> worstOf(limit, i))
                .filter(day -> day.cell() >= 0)
                .toList();
        return days.isEmpty()
                ? new Outcome.NotEvaluated("No heads of cells were kept while the limit counts, or it has no cell.")
                : judge(limit, days);
    }

    /** Cells of the part that are beyond the limit on any day on which it counts; none where it cannot be judged. */
    BitSet crossed(Limit limit) {
        BitSet crossed = new BitSet(description.grid().cellCount());
        if (outcome(limit) instanceof Outcome.NotEvaluated) {
            return crossed;
        }
        for (int i = 0; i < series.grids().size(); i++) {
            if (counts(limit, series.grids().get(i).day())) {
                addCrossed(limit, i, crossed);
            }
        }
        return crossed;
    }

    private void addCrossed(Limit limit, int grid, BitSet crossed) {
        double[] heads = series.grids().get(grid).head();
        double[] reference = reference(limit, grid).head();
        for (int cell : part.cells()) {
            if (limit.quantity().margin(value(limit.quantity(), heads[cell], reference[cell], cell)) < 0) {
                crossed.set(cell);
            }
        }
    }

    private boolean counts(Limit limit, double day) {
        return day
                        >= Math.max(
                                limit.period().fromDay(),
                                referenceDay(limit.comparison()).orElse(0))
                && day <= limit.period().toDay().orElse(Double.POSITIVE_INFINITY);
    }

    private static OptionalDouble referenceDay(Comparison comparison) {
        return comparison instanceof Comparison.OnDay on ? OptionalDouble.of(on.day()) : OptionalDouble.empty();
    }

    private int gridOn(double day) {
        return IntStream.range(0, series.grids().size())
                .filter(i -> series.grids().get(i).day() == day)
                .findFirst()
                .orElse(-1);
    }

    private HeadGrid reference(Limit limit, int grid) {
        if (limit.needsOtherRun()) {
            return Objects.requireNonNull(series.others().get(limit.comparison()))
                    .get(grid);
        }
        OptionalDouble day = referenceDay(limit.comparison());
        return series.grids().get(day.isPresent() ? gridOn(day.getAsDouble()) : 0);
    }

    private DayWorst worstOf(Limit limit, int grid) {
        HeadGrid heads = series.grids().get(grid);
        HeadGrid reference = reference(limit, grid);
        RectilinearGrid cells = description.grid();
        DayWorst worst = new DayWorst(heads.day(), -1, Double.NaN, Double.POSITIVE_INFINITY, 0);
        double beyond = 0;
        for (int cell : part.cells()) {
            double value = value(limit.quantity(), heads.head()[cell], reference.head()[cell], cell);
            double margin = limit.quantity().margin(value);
            if (margin < 0) {
                beyond += cells.area(cell);
            }
            if (margin < worst.margin()) {
                worst = new DayWorst(heads.day(), cell, value, margin, 0);
            }
        }
        return new DayWorst(worst.day(), worst.cell(), worst.value(), worst.margin(), beyond);
    }

    private double value(LimitedQuantity quantity, double head, double reference, int cell) {
        if (quantity instanceof LimitedQuantity.Drawdown) {
            return reference - head;
        }
        if (quantity instanceof LimitedQuantity.ShareOfAvailableHead share) {
            double base = base(share, cell);
            return PER_CENT * (head - base) / (reference - base);
        }
        return head;
    }

    private double base(LimitedQuantity.ShareOfAvailableHead share, int cell) {
        return share.above().level().orElse(description.aquifer().top()[cell]);
    }

    private Outcome judge(Limit limit, List<DayWorst> days) {
        DayWorst worst = days.get(0);
        List<Double> beyond = new ArrayList<>();
        for (DayWorst day : days) {
            worst = day.margin() < worst.margin() ? day : worst;
            if (day.margin() < 0) {
                beyond.add(day.day());
            }
        }
        OptionalDouble first = beyond.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(beyond.get(0));
        Outcome.Worst found = new Outcome.Worst(
                worst.day(),
                worst.value(),
                worst.margin(),
                error(limit, worst) + errorByChanges(limit),
                note(worst, days) + before(days, first),
                Optional.of(new Position(
                        description.grid().centreX(worst.cell()),
                        description.grid().centreY(worst.cell()))));
        return Judgement.of(limit, description.endDay(), first, found);
    }

    /** The kept day before the first one beyond the limit, for the crossing lies between the two. */
    private String before(List<DayWorst> days, OptionalDouble first) {
        return days.stream()
                .map(DayWorst::day)
                .filter(day -> first.isPresent() && day < first.getAsDouble())
                .reduce((a, b) -> b)
                .map(day -> " Kept heads are not yet beyond it on "
                        + description.calendar().at(day).toLocalDate() + ".")
                .orElse("");
    }

    /** Sum over the changed runs of what they change the limited value by at most. */
    private double errorByChanges(Limit limit) {
        double sum = 0;
        for (ChangedRun changed : changedRuns) {
            sum += changed.share() * largestChange(limit, changed.maps());
        }
        return sum;
    }

    private double largestChange(Limit limit, ChangedMaps changed) {
        double largest = 0;
        for (int record = 0; record < changed.heads().grids().size(); record++) {
            HeadGrid heads = changed.heads().grids().get(record);
            int grid = gridOn(heads.day());
            if (grid >= 0 && counts(limit, heads.day())) {
                largest = Math.max(largest, largestChange(limit, changed, record, grid));
            }
        }
        return largest;
    }

    private double largestChange(Limit limit, ChangedMaps changed, int record, int grid) {
        HeadGrid run = series.grids().get(grid);
        HeadGrid reference = reference(limit, grid);
        double[] ofRun = change(changed, run, changed.heads().grids().get(record));
        double[] ofReference = changed.hasReference(limit)
                ? change(
                        changed,
                        reference,
                        changed.reference(limit, referenceRecord(limit, changed, record, reference)))
                : new double[ofRun.length];
        double largest = 0;
        for (int cell : part.cells()) {
            double head = run.head()[cell];
            double with = reference.head()[cell];
            double before = value(limit.quantity(), head, with, cell);
            double after = value(limit.quantity(), head + ofRun[cell], with + ofReference[cell], cell);
            largest = Math.max(largest, Math.abs(after - before));
        }
        return largest;
    }

    private double[] change(ChangedMaps changed, HeadGrid run, HeadGrid other) {
        return changed.change(description.grid(), description.aquifer().active(), run, other);
    }

    /** Another run is compared on the same day, and a day that limits compare with is among those of the changed runs. */
    private static int referenceRecord(Limit limit, ChangedMaps changed, int record, HeadGrid reference) {
        return limit.needsOtherRun()
                ? record
                : IntStream.range(0, changed.heads().grids().size())
                        .filter(i -> changed.heads().grids().get(i).day() == reference.day())
                        .findFirst()
                        .orElseThrow();
    }

    private double error(Limit limit, DayWorst worst) {
        int errors = limit.needsOtherRun() || limit.comparison() instanceof Comparison.OnDay ? 2 : 1;
        double ofHead = errors * series.headError();
        if (limit.quantity() instanceof LimitedQuantity.ShareOfAvailableHead share) {
            int grid = gridOn(worst.day());
            double available = reference(limit, grid).head()[worst.cell()] - base(share, worst.cell());
            return PER_CENT * ofHead / Math.abs(available);
        }
        return ofHead;
    }

    private String note(DayWorst worst, List<DayWorst> days) {
        RectilinearGrid grid = description.grid();
        String where = String.format(
                Locale.ROOT,
                "In the cell at x %.0f m, y %.0f m; judged on %d %s with heads of cells, the last %s%s",
                grid.centreX(worst.cell()),
                grid.centreY(worst.cell()),
                days.size(),
                days.size() == 1 ? "day" : "days",
                description.calendar().at(days.get(days.size() - 1).day()).toLocalDate(),
                changedRuns.isEmpty() ? "; the error is that of time stepping alone" : "");
        return worst.areaBeyond() > 0
                ? where
                        + String.format(
                                Locale.ROOT,
                                "; beyond the limit on %.3f km² that day.",
                                worst.areaBeyond() / SQUARE_METRES_PER_SQUARE_KILOMETRE)
                : where + ".";
    }
}
