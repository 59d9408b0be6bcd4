package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.recording.DischargeHistory;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import ucar.ma2.DataType;
import ucar.nc2.Attribute;
import ucar.nc2.Variable;

/**
 * Writes and reads {@code discharges.nc}: discharge of every bore and spring in straight pieces of time, with its jumps,
 * which series at recorded days cannot show.
 */
public final class DischargesFile {

    /** Name of the file in the folder of the results. */
    public static final String NAME = "discharges.nc";

    private static final String SUMMARY =
            "Discharge of bores and springs in straight pieces of time, as superposition of responses needs it.";

    private DischargesFile() {}

    /**
     * Writes the file; it appears under its name when it is whole.
     *
     * @param folder folder of the results
     * @param description the run
     * @param history the discharges
     * @throws IOException if it cannot be written
     */
    public static void write(Path folder, RunDescription description, DischargeHistory history) throws IOException {
        List<String> names = description.stations().stream()
                .limit(history.points())
                .map(Station::name)
                .toList();
        try (GrowingFile file = new GrowingFile(folder.resolve(NAME))) {
            file.globals(GlobalAttributes.of(description, SUMMARY, Instant.now()));
            file.dimension("time", history.pieces());
            file.dimension("bounds", 2);
            file.dimension("station", names.size());
            file.dimension("name_strlen", GrowingFile.longest(names));
            Variable time = CommonVariables.time(file, description.calendar());
            time.addAttribute(new Attribute("bounds", "time_bnds"));
            Variable bounds = file.variable("time_bnds", DataType.DOUBLE, "time bounds");
            Variable name = file.variable(
                    "station_name",
                    DataType.CHAR,
                    "station name_strlen",
                    "cf_role",
                    "timeseries_id",
                    "long_name",
                    "name of the bore or spring",
                    "_Encoding",
                    "UTF-8");
            Variable begin = discharge(file, "begin");
            Variable end = discharge(file, "end");
            file.create();
            file.writeNames(name, names);
            double[] days = history.days();
            double[] edges = new double[2 * history.pieces()];
            Arrays.setAll(edges, i -> days[(i + 1) / 2]);
            double[] last = Arrays.copyOfRange(days, 1, days.length);
            file.writeDoubles(time, new int[] {0}, new int[] {last.length}, last);
            file.writeDoubles(bounds, new int[] {0, 0}, new int[] {last.length, 2}, edges);
            for (int point = 0; point < names.size(); point++) {
                file.writeDoubles(begin, new int[] {point, 0}, new int[] {1, last.length}, history.begin()[point]);
                file.writeDoubles(end, new int[] {point, 0}, new int[] {1, last.length}, history.end()[point]);
            }
            file.complete();
        }
    }

    private static Variable discharge(GrowingFile file, String which) {
        return file.variable(
                "discharge_at_" + which,
                DataType.DOUBLE,
                "station time",
                "long_name",
                "discharge at the " + which + " of a piece of time, in which it runs straight",
                "units",
                "m3 d-1",
                "coordinates",
                "station_name");
    }

    /**
     * Reads the file.
     *
     * @param folder folder of the results
     * @return the discharges, empty if the folder has no such file
     * @throws IOException if it is damaged
     */
    public static Optional<DischargeHistory> read(Path folder) throws IOException {
        if (!Files.isRegularFile(folder.resolve(NAME))) {
            return Optional.empty();
        }
        try (RecordedFile file = new RecordedFile(folder.resolve(NAME))) {
            double[] edges = file.doubles("time_bnds");
            double[] days = new double[edges.length / 2 + 1];
            for (int i = 1; i < days.length; i++) {
                days[i] = edges[2 * i - 1];
            }
            days[0] = edges[0];
            int points = file.shape("discharge_at_begin")[0];
            return Optional.of(new DischargeHistory(
                    days,
                    rows(file.doubles("discharge_at_begin"), points),
                    rows(file.doubles("discharge_at_end"), points)));
        }
    }

    private static double[][] rows(double[] values, int rows) {
        int length = values.length / rows;
        List<double[]> cut = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            cut.add(Arrays.copyOfRange(values, row * length, (row + 1) * length));
        }
        return cut.toArray(double[][]::new);
    }
}
