package org.headfall.scenarios.limits;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.bore.WaterColumn;

/** Limited quantities that are made of head at a station. */
final class HeadValues {

    private static final double PER_CENT = 100;

    private final RunDescription description;
    private final Station station;
    private final StationSeries series;
    private final Optional<StationSeries> other;
    private final Comparison comparison;
    private final double headError;

    HeadValues(
            RunDescription description,
            int station,
            StationSeries series,
            Optional<StationSeries> other,
            Comparison comparison,
            double headError) {
        this.description = description;
        this.station = description.stations().get(station);
        this.series = series;
        this.other = other;
        this.comparison = comparison;
        this.headError = headError;
    }

    /** Series of a quantity that is made of head. */
    LimitSeries of(LimitedQuantity quantity) {
        if (quantity instanceof LimitedQuantity.FloorLevel) {
            return LimitSeries.of(quantity, series.days(), series.head(), headError);
        }
        if (quantity instanceof LimitedQuantity.Pressure pressure) {
            return pressure(pressure);
        }
        if (quantity instanceof LimitedQuantity.DeclineRate rate) {
            return declineRate(rate);
        }
        return quantity instanceof LimitedQuantity.ShareOfAvailableHead share ? share(share) : drawdown(quantity);
    }

    private LimitSeries pressure(LimitedQuantity.Pressure quantity) {
        WaterColumn column = station instanceof Station.BoreSite bore
                ? bore.hotColumn().orElse(WaterColumn.REFERENCE)
                : WaterColumn.REFERENCE;
        double gauge = quantity.gaugeLevel().orElse(station.groundLevel());
        double[] values = Arrays.stream(series.head())
                .map(head -> column.gaugePressure(head, gauge))
                .toArray();
        double perMetre = column.gaugePressure(1, 0) - column.gaugePressure(0, 0);
        return LimitSeries.of(quantity, series.days(), values, headError * perMetre);
    }

    private LimitSeries drawdown(LimitedQuantity quantity) {
        ReferenceValues reference = reference();
        return sinceReference(
                quantity,
                reference,
                record -> reference.at(record) - series.head()[record],
                reference.errors() * headError);
    }

    private LimitSeries share(LimitedQuantity.ShareOfAvailableHead quantity) {
        ReferenceValues reference = reference();
        double base = base(quantity.above()).orElse(Double.NaN);
        return sinceReference(
                quantity,
                reference,
                record -> PER_CENT * (series.head()[record] - base) / (reference.at(record) - base),
                PER_CENT * reference.errors() * headError / leastAvailable(quantity));
    }

    /**
     * By how much a share falls per metre of drawdown: what it is compared with stays as it is.
     *
     * @param quantity the share
     * @param days days on which the share is known (d)
     * @return per cent per metre on each day: infinite where what the share is taken of is at the level from which it is
     *     counted, negative where it is below, NaN if the station has no such level
     */
    double[] perMetre(LimitedQuantity.ShareOfAvailableHead quantity, double[] days) {
        ReferenceValues reference = reference();
        double base = base(quantity.above()).orElse(Double.NaN);
        return Arrays.stream(days)
                .map(day -> PER_CENT / (reference.onDay(day) - base))
                .toArray();
    }

    /** Smallest head above the level that a share is taken of (m); NaN if the station has no such level. */
    double leastAvailable(LimitedQuantity.ShareOfAvailableHead quantity) {
        ReferenceValues reference = reference();
        double base = base(quantity.above()).orElse(Double.NaN);
        return IntStream.range(reference.firstRecord(), series.days().length)
                .mapToDouble(record -> reference.at(record) - base)
                .min()
                .orElse(Double.NaN);
    }

    /** The level from which available head is counted (m above datum), if the station has it. */
    private OptionalDouble base(LimitedQuantity.ShareOfAvailableHead.Base above) {
        return switch (above.kind()) {
            case GIVEN -> above.level();
            case OUTLET -> station.outletLevel();
            case PUMP_INTAKE -> station instanceof Station.BoreSite bore ? bore.pumpIntake() : OptionalDouble.empty();
            case AQUIFER_TOP ->
                OptionalDouble.of(
                        station instanceof Station.BoreSite bore
                                ? bore.aquiferTop()
                                : description.aquifer().top()[description.grid().locate(station.x(), station.y())]);
        };
    }

    private ReferenceValues reference() {
        return new ReferenceValues(series, other, comparison, StationSeries::head);
    }

    private LimitSeries sinceReference(
            LimitedQuantity quantity, ReferenceValues reference, IntToDoubleFunction value, double error) {
        int first = reference.firstRecord();
        double[] days = Arrays.copyOfRange(series.days(), first, series.days().length);
        double[] values = new double[days.length];
        Arrays.setAll(values, i -> value.applyAsDouble(first + i));
        return LimitSeries.of(quantity, days, values, error);
    }

    /** Only days that lie far enough after the start for the whole mean. */
    private LimitSeries declineRate(LimitedQuantity.DeclineRate rate) {
        RunCalendar calendar = description.calendar();
        double[] days = series.days();
        double[] head = series.head().clone();
        for (int i = 0; other.isPresent() && i < head.length; i++) {
            head[i] -= other.get().headAt(days[i]);
        }
        double firstDay = calendar.yearsAfter(days[0], rate.overYears());
        int skipped = 0;
        while (skipped < days.length && days[skipped] < firstDay) {
            skipped++;
        }
        double[] laterDays = Arrays.copyOfRange(days, skipped, days.length);
        double[] values = new double[laterDays.length];
        for (int i = 0; i < values.length; i++) {
            double earlier = Math.max(days[0], calendar.yearsAfter(laterDays[i], -rate.overYears()));
            double years = (laterDays[i] - earlier) / RunCalendar.DAYS_PER_YEAR;
            values[i] = (StationSeries.interpolate(days, head, earlier) - head[skipped + i]) / years;
        }
        double differences = other.isPresent() ? 2 * headError : headError;
        return LimitSeries.of(rate, laterDays, values, 2 * differences / rate.overYears());
    }
}
