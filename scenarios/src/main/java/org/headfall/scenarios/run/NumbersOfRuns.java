package org.headfall.scenarios.run;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.FinishedRun;

/**
 * Compares two runs number by number: the series of all stations, then the grids, as exactly as a folder of results
 * keeps them (grids in single precision).
 */
final class NumbersOfRuns {

    private final FinishedRun before;
    private final FinishedRun now;
    private long numbers;

    NumbersOfRuns(FinishedRun before, FinishedRun now) {
        this.before = before;
        this.now = now;
    }

    /** A column of the series of stations. */
    private record Column(String name, Function<StationSeries, double[]> values) {}

    private static final List<Column> COLUMNS = List.of(
            new Column("head", StationSeries::head),
            new Column("level in the bore", StationSeries::levelInBore),
            new Column("discharge", StationSeries::discharge),
            new Column("discharge asked for", StationSeries::wantedDischarge));

    Rerun.Outcome compare() {
        return firstOfSeries().or(this::firstOfGrids).orElseGet(() -> new Rerun.Identical(numbers));
    }

    private Optional<Rerun.Outcome> firstOfSeries() {
        double[] days = before.recording().days();
        double[] daysNow = now.recording().days();
        if (days.length != daysNow.length) {
            return Optional.of(new Rerun.Differs("number of recorded days", days.length, daysNow.length));
        }
        for (int k = 0; k < days.length; k++) {
            Optional<Rerun.Outcome> first = firstOfDay(k, days[k]);
            if (first.isPresent()) {
                return first;
            }
        }
        return Optional.empty();
    }

    private Optional<Rerun.Outcome> firstOfDay(int record, double day) {
        for (int station = 0; station < before.recording().series().size(); station++) {
            StationSeries series = before.recording().series().get(station);
            StationSeries seriesNow = now.recording().series().get(station);
            for (Column column : COLUMNS) {
                double value = column.values().apply(series)[record];
                double valueNow = column.values().apply(seriesNow)[record];
                numbers++;
                if (Double.compare(value, valueNow) != 0) {
                    String name = before.description().stations().get(station).name();
                    return Optional.of(new Rerun.Differs(column.name() + " of " + name + on(day), value, valueNow));
                }
            }
        }
        return Optional.empty();
    }

    private Optional<Rerun.Outcome> firstOfGrids() {
        for (int k = 0; k < before.recording().grids().size(); k++) {
            HeadGrid grid = before.recording().grids().get(k);
            double[] headNow = now.recording().grids().get(k).head();
            for (int cell = 0; cell < headNow.length; cell++) {
                float value = (float) grid.head()[cell];
                float valueNow = (float) headNow[cell];
                numbers++;
                if (Float.compare(value, valueNow) != 0) {
                    return Optional.of(new Rerun.Differs("head of cell " + cell + on(grid.day()), value, valueNow));
                }
            }
        }
        return Optional.empty();
    }

    private String on(double day) {
        RunCalendar calendar = before.description().calendar();
        return " on " + calendar.at(day).toLocalDate();
    }
}
