package org.headfall.scenarios.limits;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.accounts.Meter;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.WaterYear;

/**
 * Whose taking a limit on volume counts, water year by water year: of each bore what its meter shows where the readings reach
 * over the year, otherwise what the run takes.
 */
public final class VolumeAccount {

    private final RunDescription description;
    private final LimitedQuantity.Volume quantity;
    private final List<String> bores;
    private final Map<String, Meter> meters = new HashMap<>();

    /**
     * A part of a water year that a limit judges as one.
     *
     * @param fromDay first day of the water year (d since the start), negative before the run
     * @param toDay end of the part, not included (d): the beginning of the next water year, or the end of the time that
     *     counts; all that is taken in the part has been taken by then
     * @param bores the bores of which what the run takes counts
     * @param metered what the meters of the others show in it (m³), whatever the run takes of them
     */
    public record Part(double fromDay, double toDay, List<String> bores, double metered) {
        /** Copies the list. */
        public Part {
            bores = List.copyOf(bores);
        }
    }

    /**
     * Account of a limit.
     *
     * @param description the run
     * @param place where the limit holds: a bore, or bores together
     * @param quantity what it limits, with the meters
     */
    public VolumeAccount(RunDescription description, LimitPlace place, LimitedQuantity.Volume quantity) {
        this.description = description;
        this.quantity = quantity;
        bores = place instanceof LimitPlace.Together together ? together.bores() : List.of(place.words());
        for (LimitedQuantity.Volume.MeteredBore one : quantity.meters()) {
            double[] days = one.readings().stream()
                    .mapToDouble(LimitedQuantity.Volume.Reading::day)
                    .toArray();
            double[] volumes = one.readings().stream()
                    .mapToDouble(LimitedQuantity.Volume.Reading::volume)
                    .toArray();
            meters.put(one.bore(), new Meter(days, volumes));
        }
    }

    List<String> bores() {
        return bores;
    }

    Collection<Meter> meters() {
        return meters.values();
    }

    /** The meter of a bore, where it counts in a year. */
    Optional<Meter> meterThatCounts(String bore, WaterYear year) {
        return Optional.ofNullable(meters.get(bore))
                .filter(meter -> meter.between(year.fromDay(), year.toDay()).isPresent());
    }

    List<WaterYear> years(double startDay, double endDay) {
        return WaterYear.within(description.calendar(), quantity.yearBegins(), startDay, endDay);
    }

    /**
     * Water years that a limit counts: those that have a part in its time. One that ends at the moment at which the limit begins
     * has none.
     *
     * @param period when the limit counts
     * @param startDay first day of the run
     * @param endDay its end (d)
     * @return the years in order
     */
    List<WaterYear> countedYears(LimitPeriod period, double startDay, double endDay) {
        double last = lastDay(period, endDay);
        return years(startDay, endDay).stream()
                .filter(year -> year.toDay() > period.fromDay() && year.fromDay() < last)
                .toList();
    }

    /** End of the time in which a limit counts in a run that ends on a day. */
    static double lastDay(LimitPeriod period, double endDay) {
        return Math.min(period.toDay().orElse(endDay), endDay);
    }

    /** Parts of the water years of a run, from its start to a day, that a limit counts. */
    public List<Part> parts(LimitPeriod period, double endDay) {
        double last = lastDay(period, endDay);
        return countedYears(period, 0, endDay).stream()
                .map(year -> part(year, Math.min(year.toDay(), last)))
                .toList();
    }

    private Part part(WaterYear year, double toDay) {
        return new Part(
                year.fromDay(),
                toDay,
                bores.stream()
                        .filter(bore -> meterThatCounts(bore, year).isEmpty())
                        .toList(),
                bores.stream()
                        .flatMap(bore -> meterThatCounts(bore, year).stream())
                        .mapToDouble(
                                meter -> meter.between(year.fromDay(), toDay).orElseThrow())
                        .sum());
    }
}
