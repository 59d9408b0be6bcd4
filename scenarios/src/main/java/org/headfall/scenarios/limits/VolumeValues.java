package org.headfall.scenarios.limits;

import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.TakenVolumes;
import org.headfall.scenarios.recording.WaterYear;

/** Volume that some bores have taken since the beginning of the water year. */
final class VolumeValues {

    private static final double CUBIC_METRES_PER_MEGALITRE = 1000;

    private final RunDescription description;
    private final TakenVolumes volumes;
    private final double[] days;

    /**
     * Volumes of a run.
     *
     * @param description the run
     * @param volumes what its bores took
     * @param days recorded days
     */
    VolumeValues(RunDescription description, TakenVolumes volumes, double[] days) {
        this.description = description;
        this.volumes = volumes;
        this.days = days;
    }

    /**
     * Running account. A water year begins with nothing just after the last day of the one before. What is taken in a
     * step is known exactly from discharges; where these follow head they are as good as the steps of the run.
     */
    LimitSeries of(LimitedQuantity.Volume quantity, List<String> bores) {
        RunCalendar calendar = description.calendar();
        TreeSet<Double> moments = new TreeSet<>();
        Arrays.stream(days).forEach(moments::add);
        for (WaterYear year : WaterYear.within(calendar, quantity.yearBegins(), volumes.startDay(), volumes.endDay())) {
            moments.add(year.toDay());
            moments.add(Math.nextUp(year.fromDay()));
        }
        int[] stations = bores.stream().mapToInt(description::stationIndex).toArray();
        double[] all = moments.stream()
                .mapToDouble(Double::doubleValue)
                .filter(day -> day >= volumes.startDay() && day <= volumes.endDay())
                .toArray();
        double[] values = Arrays.stream(all)
                .map(day -> {
                    double begins = WaterYear.until(calendar, quantity.yearBegins(), day)
                            .fromDay();
                    return Arrays.stream(stations)
                                    .mapToDouble(bore -> volumes.between(bore, begins, day))
                                    .sum()
                            / CUBIC_METRES_PER_MEGALITRE;
                })
                .toArray();
        return LimitSeries.of(quantity, all, values, 0);
    }
}
