package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.recording.StationSeries;

/** Reads {@code bores.nc} back. */
final class BoresReader implements AutoCloseable {

    private final RecordedFile file;
    private final double[] days;

    BoresReader(Path path) throws IOException {
        file = new RecordedFile(path);
        days = file.doubles("time");
    }

    double[] days() {
        return days.clone();
    }

    /** Series of every station, in the order of the file. */
    List<StationSeries> series() throws IOException {
        int stations = file.shape("station_name")[0];
        double[] head = file.doubles("hydraulic_head");
        double[] level = file.doubles("water_level_in_bore");
        double[] discharge = file.doubles("discharge");
        double[] wanted = file.doubles("wanted_discharge");
        List<StationSeries> series = new ArrayList<>();
        for (int i = 0; i < stations; i++) {
            series.add(new StationSeries(
                    days,
                    column(head, i, stations),
                    column(level, i, stations),
                    column(discharge, i, stations),
                    column(wanted, i, stations)));
        }
        return series;
    }

    private double[] column(double[] values, int station, int stations) {
        double[] column = new double[days.length];
        for (int record = 0; record < column.length; record++) {
            column[record] = values[record * stations + station];
        }
        return column;
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
