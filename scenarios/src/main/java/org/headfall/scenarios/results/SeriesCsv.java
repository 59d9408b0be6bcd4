package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;

/** Writes {@code bores.csv}: the series of all stations in long form, one line a station and recorded day. */
final class SeriesCsv {

    static final String NAME = "bores.csv";

    private static final List<String> HEADER = List.of(
            "name",
            "kind",
            "date",
            "days since start (d)",
            "head (m above datum)",
            "drawdown since start (m)",
            "water level in bore (m above datum)",
            "discharge (m3/d)",
            "discharge asked for (m3/d)");

    private SeriesCsv() {}

    static void write(Path target, RunDescription description, Recording recording) throws IOException {
        try (CsvFile file = new CsvFile(target, HEADER)) {
            CsvLineCells[] days = days(recording.days(), description.calendar());
            for (int i = 0; i < description.stations().size(); i++) {
                station(
                        file,
                        days,
                        description.stations().get(i),
                        recording.series().get(i));
            }
            file.complete();
        }
    }

    /** Date and day of all records, which are the same at all stations. */
    private static CsvLineCells[] days(double[] recorded, RunCalendar calendar) {
        CsvLineCells[] days = new CsvLineCells[recorded.length];
        Arrays.setAll(
                days, k -> new CsvLineCells().date(calendar.at(recorded[k])).number(recorded[k], 3));
        return days;
    }

    private static void station(CsvFile file, CsvLineCells[] days, Station station, StationSeries series)
            throws IOException {
        CsvLineCells place = new CsvLineCells().text(station.name()).text(station.kind());
        for (int k = 0; k < days.length; k++) {
            file.line(new CsvLineCells()
                    .cells(place)
                    .cells(days[k])
                    .number(series.head()[k], 3)
                    .number(series.head()[0] - series.head()[k], 3)
                    .number(series.levelInBore()[k], 3)
                    .number(series.discharge()[k], 2)
                    .number(series.wantedDischarge()[k], 2));
        }
    }
}
