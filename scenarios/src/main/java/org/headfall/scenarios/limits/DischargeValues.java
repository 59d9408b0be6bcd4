package org.headfall.scenarios.limits;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;

/** Limited quantities that are made of the discharge of a bore or spring. */
final class DischargeValues {

    private static final double PER_CENT = 100;

    private final RunDescription description;
    private final Station station;
    private final StationSeries series;
    private final Optional<StationSeries> other;
    private final Comparison comparison;
    private final double headError;

    DischargeValues(
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

    /** Discharge of a bore on the days on which it flows freely, in L/s. */
    LimitSeries flow(LimitedQuantity.Flow quantity) {
        double[] days = series.days();
        int[] flowing = IntStream.range(0, days.length)
                .filter(i -> quantity.open().stream().anyMatch(time -> time.has(days[i])))
                .toArray();
        return LimitSeries.of(
                quantity,
                Arrays.stream(flowing).mapToDouble(i -> days[i]).toArray(),
                Arrays.stream(flowing)
                        .mapToDouble(i -> DischargeUnit.LITRES_PER_SECOND.of(series.discharge()[i]))
                        .toArray(),
                DischargeUnit.LITRES_PER_SECOND.of(headError * specificCapacity()));
    }

    /**
     * Discharge that a metre of head is worth to a bore (m²/d), by the solution of Jacob and Lohman (1952) after a day:
     * {@code 4 pi T / ln(2.25 T t / (r² S))}; less after longer times and with well loss.
     */
    private double specificCapacity() {
        int cell = description.grid().locate(station.x(), station.y());
        double transmissivity = description.aquifer().effectiveTransmissivity(cell);
        double radius = ((Station.BoreSite) station).screenRadius();
        double time =
                2.25 * transmissivity / (radius * radius * description.aquifer().storativity()[cell]);
        return 4 * Math.PI * transmissivity / Math.log(Math.max(time, Math.E));
    }

    LimitSeries springDischarge(LimitedQuantity.SpringDischarge quantity) {
        double[] values = Arrays.stream(series.discharge())
                .map(DischargeUnit.LITRES_PER_SECOND::of)
                .toArray();
        return LimitSeries.of(
                quantity, series.days(), values, DischargeUnit.LITRES_PER_SECOND.of(headError * conductance()));
    }

    /** What is left of a discharge, in per cent; all of it where there was none. */
    LimitSeries shareOfSpringDischarge(LimitedQuantity.ShareOfSpringDischarge quantity) {
        ReferenceValues reference = new ReferenceValues(series, other, comparison, StationSeries::discharge);
        int first = reference.firstRecord();
        double[] days = Arrays.copyOfRange(series.days(), first, series.days().length);
        double[] values = new double[days.length];
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < values.length; i++) {
            double whole = reference.at(first + i);
            values[i] = whole > 0 ? PER_CENT * series.discharge()[first + i] / whole : PER_CENT;
            least = whole > 0 ? Math.min(least, whole) : least;
        }
        double error = PER_CENT * reference.errors() * headError * conductance() / least;
        return LimitSeries.of(quantity, days, values, error);
    }

    /**
     * By how much the discharge of a spring falls per metre of drawdown while it flows (L/s per m): by its conductance.
     */
    double perMetre() {
        return DischargeUnit.LITRES_PER_SECOND.of(conductance());
    }

    /**
     * By how much a share falls per metre of drawdown while the spring flows: what it is compared with stays as it is.
     *
     * @param days days on which the share is known (d)
     * @return per cent per metre on each day; 0 where it is compared with a spring that does not flow
     */
    double[] shareOfSpringDischargePerMetre(double[] days) {
        ReferenceValues reference = new ReferenceValues(series, other, comparison, StationSeries::discharge);
        return Arrays.stream(days)
                .map(reference::onDay)
                .map(whole -> whole > 0 ? PER_CENT * conductance() / whole : 0)
                .toArray();
    }

    private double conductance() {
        return ((Station.SpringSite) station).conductance();
    }
}
