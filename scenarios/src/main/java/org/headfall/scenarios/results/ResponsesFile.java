package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.responses.KeyPart;
import org.headfall.scenarios.responses.StoredResponses;
import org.headfall.solver.response.ResponseTable;
import org.headfall.solver.response.UndisturbedHeads;
import ucar.ma2.DataType;
import ucar.nc2.Variable;

/**
 * Writes {@code responses.nc}: drawdown at every bore, spring and protected point over the time since a bore or spring
 * has begun to take 1 m³/d, and heads without any of them. Between the times a curve is the cubic over the logarithm of
 * time through values and rates of change; before the first it runs straight from the value at once. The parts of the key are
 * global attributes that begin with {@value #AQUIFER_PART} and {@value #UNDISTURBED_PART}.
 */
public final class ResponsesFile {

    /** Name of the file in the folder of the results. */
    public static final String NAME = "responses.nc";

    static final String AQUIFER_KEY = "aquifer_key";
    static final String UNDISTURBED_KEY = "undisturbed_key";
    private static final String AQUIFER_PART = "aquifer_sha256_";
    private static final String UNDISTURBED_PART = "undisturbed_sha256_";

    private static final String UNDISTURBED = "hydraulic head without any bore and spring";

    private static final String SUMMARY =
            "Step responses of hydraulic head at bores, springs and protected points to the"
                    + " discharge of each bore and spring of a confined aquifer, and heads without any of them.";

    private final GrowingFile file;
    private final RunDescription description;
    private final StoredResponses stored;

    private ResponsesFile(GrowingFile file, RunDescription description, StoredResponses stored) {
        this.file = file;
        this.description = description;
        this.stored = stored;
    }

    /**
     * Writes the file; it appears under its name when it is whole.
     *
     * @param folder folder of the results
     * @param description the run
     * @param stored its responses
     * @param undisturbed heads without bores and springs
     * @param days days for which these heads are written too
     * @param now time of writing, for its history
     * @throws IOException if the file cannot be written
     */
    public static void write(
            Path folder,
            RunDescription description,
            StoredResponses stored,
            UndisturbedHeads undisturbed,
            double[] days,
            Instant now)
            throws IOException {
        try (GrowingFile file = new GrowingFile(folder.resolve(NAME))) {
            file.globals(GlobalAttributes.of(description, SUMMARY, now));
            new ResponsesFile(file, description, stored).write(undisturbed, days);
            file.complete();
        }
    }

    private void write(UndisturbedHeads undisturbed, double[] days) throws IOException {
        keys();
        file.global("featureType", "timeSeries");
        file.dimension("time", days.length);
        file.dimension("response_time", stored.responses().table().times().length);
        Variable time = CommonVariables.time(file, description.calendar());
        Variable responseTime = file.variable(
                "response_time",
                DataType.DOUBLE,
                "response_time",
                "long_name",
                "time since the discharge began",
                "units",
                "d");
        StationVariables stations = StationVariables.define(file, description);
        CommonVariables.gridMapping(file, description);
        List<String> causes = description.stations().stream()
                .limit(stored.responses().causes())
                .map(Station::name)
                .toList();
        Optional<CurveVariables> ofCauses = causes.isEmpty()
                ? Optional.empty()
                : Optional.of(new CurveVariables("cause", "bore or spring that takes water", "drawdown", causes));
        List<String> names =
                undisturbed.sources().stream().map(source -> source.name()).toList();
        Optional<CurveVariables> ofSources = names.isEmpty()
                ? Optional.empty()
                : Optional.of(new CurveVariables(
                        "source", "boundary or recharge that changes", "rise of hydraulic head", names));
        Optional<Variable> steady = stored.responses().steady().isPresent() && ofCauses.isPresent()
                ? Optional.of(perStation("steady_response", "cause station", "drawdown in the end", "d m-2"))
                : Optional.empty();
        Variable atStart = perStation("undisturbed_head_at_start", "station", UNDISTURBED + " at the start", "m");
        Variable later = perStation("undisturbed_head", "time station", UNDISTURBED, "m");
        file.create();
        stations.write(file, description);
        doubles(time, days);
        doubles(responseTime, stored.responses().table().times());
        if (ofCauses.isPresent()) {
            ofCauses.get().write(stored.responses().table());
        }
        if (ofSources.isPresent()) {
            ofSources.get().write(undisturbed.rises());
        }
        if (steady.isPresent()) {
            doubles(steady.get(), stored.responses().steady().orElseThrow(), causes.size(), stationCount());
        }
        doubles(atStart, stored.headAtStart(), stationCount());
        for (int k = 0; k < days.length; k++) {
            file.writeDoubles(later, new int[] {k, 0}, new int[] {1, stationCount()}, undisturbed.on(days[k]));
        }
    }

    private int stationCount() {
        return description.stations().size();
    }

    private void keys() {
        file.global(AQUIFER_KEY, stored.key().aquiferKey());
        file.global(UNDISTURBED_KEY, stored.key().undisturbedKey());
        stored.key().parts().forEach((part, digest) -> file.global(attribute(part), digest));
    }

    /** Name of the attribute of a part of the key. */
    static String attribute(KeyPart part) {
        String prefix = switch (part.dependent()) {
            case RESPONSES -> AQUIFER_PART;
            case UNDISTURBED_HEADS -> UNDISTURBED_PART;
        };
        return prefix + part.words().replace(",", "").replace(' ', '_');
    }

    private Variable perStation(String name, String dimensions, String longName, String units) {
        Variable variable = file.variable(
                name,
                DataType.DOUBLE,
                dimensions,
                "long_name",
                longName + (units.equals("m") ? " above " + description.datum() : " by a discharge of 1 m3 d-1"),
                "units",
                units,
                "coordinates",
                StationVariables.coordinates(description));
        CommonVariables.placed(variable, description);
        return variable;
    }

    private void doubles(Variable variable, double[] values, int... shape) throws IOException {
        int[] full = shape.length == 0 ? new int[] {values.length} : shape;
        file.writeDoubles(variable, new int[full.length], full, values);
    }

    /** Curves of all causes of a kind at all stations. */
    private final class CurveVariables {

        private final List<String> names;
        private final Variable name;
        private final Variable atOnce;
        private final Variable values;
        private final Variable rates;

        CurveVariables(String kind, String what, String effect, List<String> names) {
            this.names = names;
            file.dimension(kind, names.size());
            file.dimension(kind + "_strlen", GrowingFile.longest(names));
            name = file.variable(
                    kind + "_name",
                    DataType.CHAR,
                    kind + " " + kind + "_strlen",
                    "long_name",
                    "name of the " + what,
                    "_Encoding",
                    "UTF-8");
            String dimensions = "response_time " + kind + " station";
            values = perStation(kind + "_response", dimensions, effect, "d m-2");
            rates = perStation(kind + "_response_rate", dimensions, "rate of change of " + effect, "m-2");
            atOnce = perStation(kind + "_response_at_once", kind + " station", effect + " at once", "d m-2");
        }

        void write(ResponseTable table) throws IOException {
            file.writeNames(name, names);
            doubles(atOnce, table.atOnce(), names.size(), stationCount());
            int[] shape = {1, names.size(), stationCount()};
            for (int i = 0; i < table.times().length; i++) {
                int[] origin = {i, 0, 0};
                file.writeDoubles(values, origin, shape, table.valuesAt(i));
                file.writeDoubles(rates, origin, shape, table.ratesAt(i));
            }
        }
    }
}
