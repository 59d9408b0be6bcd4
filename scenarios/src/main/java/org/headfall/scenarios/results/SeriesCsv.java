package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;

/** Writes {@code bores.csv}: the series of all stations in long form, one line a station and recorded day. */
final class SeriesCsv {

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
            for (int i = 0; i < description.stations().size(); i++) {
                station(
                        file,
                        description,
                        description.stations().get(i),
                        recording.series().get(i));
            }
            file.complete();
        }
    }

    private static void station(CsvFile file, RunDescription description, Station station, StationSeries series)
            throws IOException {
        for (int k = 0; k < series.days().length; k++) {
            file.line(new CsvLineCells()
                    .text(station.name())
                    .text(station.kind())
                    .date(description.calendar().at(series.days()[k]))
                    .number(series.days()[k], 3)
                    .number(series.head()[k], 3)
                    .number(series.head()[0] - series.head()[k], 3)
                    .number(series.levelInBore()[k], 3)
                    .number(series.discharge()[k], 2)
                    .number(series.wantedDischarge()[k], 2));
        }
    }
}
