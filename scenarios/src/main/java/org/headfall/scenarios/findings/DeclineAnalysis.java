package org.headfall.scenarios.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.ReportDate;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;

/** Finds the decline at every station from a recording. */
public final class DeclineAnalysis {

    private final RunDescription description;
    private final Recording recording;
    private final FiveYears fiveYears;

    /**
     * Analysis of a run.
     *
     * @param description the run
     * @param recording what it recorded
     */
    public DeclineAnalysis(RunDescription description, Recording recording) {
        this.description = description;
        this.recording = recording;
        fiveYears = new FiveYears(description);
    }

    /** Decline of every station up to every report date that the run reaches, by station, then by date. */
    public List<Decline> ofAllStations() {
        List<Decline> declines = new ArrayList<>();
        for (int i = 0; i < description.stations().size(); i++) {
            for (ReportDate date : description.reportDates()) {
                if (date.day() > recording.startDay() && date.day() <= recording.endDay()) {
                    declines.add(decline(
                            description.stations().get(i), recording.series().get(i), date));
                }
            }
        }
        return declines;
    }

    private Decline decline(Station station, StationSeries series, ReportDate date) {
        double day = date.day();
        double top = StationTop.of(description, station);
        OptionalDouble slope = fiveYears.meanFall(series.days(), series.head(), day);
        double before = series.head()[0] - top;
        return new Decline(
                station.name(),
                station.kind(),
                date.label(),
                day,
                series.headAt(day),
                slope,
                before > 0 ? OptionalDouble.of((series.headAt(day) - top) / before) : OptionalDouble.empty(),
                reached(OptionalDouble.of(top), series.days(), series.head(), day),
                reached(station.outletLevel(), series.days(), series.head(), day),
                station instanceof Station.BoreSite bore
                        ? reached(bore.pumpIntake(), series.days(), series.levelInBore(), day)
                        : Decline.Reached.NO_LEVEL);
    }

    private Decline.Reached reached(OptionalDouble level, double[] days, double[] values, double day) {
        if (level.isEmpty()) {
            return Decline.Reached.NO_LEVEL;
        }
        double above = StationSeries.interpolate(days, values, day) - level.getAsDouble();
        OptionalDouble slope = fiveYears.meanFall(days, values, day);
        Decline.Left left = left(above, slope);
        return new Decline.Reached(
                level,
                Crossing.below(days, values, level.getAsDouble(), 0),
                left == Decline.Left.YEARS ? OptionalDouble.of(above / slope.getAsDouble()) : OptionalDouble.empty(),
                left);
    }

    /**
     * Whether there are years left.
     *
     * @param above height above the level (m)
     * @param slope fall of that height (m/yr), if it is known
     */
    private static Decline.Left left(double above, OptionalDouble slope) {
        if (above <= 0) {
            return Decline.Left.PASSED;
        }
        if (slope.isEmpty()) {
            return Decline.Left.SLOPE_UNKNOWN;
        }
        if (slope.getAsDouble() <= 0) {
            return Decline.Left.NOT_FALLING;
        }
        boolean later = slope.getAsDouble() * Decline.Reached.LONGEST_YEARS <= above;
        return later ? Decline.Left.LATER : Decline.Left.YEARS;
    }
}
