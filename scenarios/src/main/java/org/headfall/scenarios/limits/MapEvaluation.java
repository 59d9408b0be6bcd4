package org.headfall.scenarios.limits;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Judges a limit on all cells of a part of the map, on the days on which heads of the grid were kept. Between these days
 * nothing is known, so the first day beyond the limit is one of them. Heads are those of cells: close to a bore they
 * stand above the head at its wall.
 */
final class MapEvaluation {

    private static final double SQUARE_METRES_PER_SQUARE_KILOMETRE = 1e6;
    private static final double PER_CENT = 100;

    private final RunDescription description;
    private final MapSeries series;
    private final MapPlaces.Part part;

    MapEvaluation(RunDescription description, MapSeries series, MapPlaces.Part part) {
        this.description = description;
        this.series = series;
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
        Outcome.Worst found = new Outcome.Worst(
                worst.day(), worst.value(), worst.margin(), error(limit, worst), note(worst, days.size()));
        OptionalDouble first = beyond.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(beyond.get(0));
        return Judgement.of(limit, description.endDay(), first, found);
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

    private String note(DayWorst worst, int days) {
        RectilinearGrid grid = description.grid();
        String where = String.format(
                Locale.ROOT,
                "In the cell at x %.0f m, y %.0f m; judged on %d %s with heads of cells; the error is that of time"
                        + " stepping alone",
                grid.centreX(worst.cell()),
                grid.centreY(worst.cell()),
                days,
                days == 1 ? "day" : "days");
        return worst.areaBeyond() > 0
                ? where
                        + String.format(
                                Locale.ROOT,
                                "; beyond the limit on %.3f km² that day.",
                                worst.areaBeyond() / SQUARE_METRES_PER_SQUARE_KILOMETRE)
                : where + ".";
    }
}
