package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Writes {@code measured-heads.csv}: each measured head beside the computed one. */
final class MeasurementsCsv {

    private static final List<String> HEADER = List.of(
            "station",
            "date",
            "read",
            "measured head (m above datum)",
            "computed head (m above datum)",
            "computed less measured (m)");

    private MeasurementsCsv() {}

    static void write(Path target, FinishedRun run) throws IOException {
        CsvFile.write(target, HEADER, run.description().measurements(), measurement -> {
            int station = run.description().stationIndex(measurement.station());
            double computed = run.recording().series().get(station).headAt(measurement.day());
            return new CsvLineCells()
                    .text(measurement.station())
                    .date(run.description().calendar().at(measurement.day()))
                    .text(measurement.read())
                    .number(measurement.head(), 3)
                    .number(computed, 3)
                    .number(computed - measurement.head(), 3);
        });
    }
}
