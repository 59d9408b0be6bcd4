package org.headfall.scenarios.results;

import java.io.IOException;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import ucar.ma2.Array;
import ucar.ma2.DataType;
import ucar.nc2.Attribute;
import ucar.nc2.Variable;

/** Names, places and levels of the stations of {@code bores.nc}. */
final class StationVariables {

    static final String COORDINATES = "x y station_name";

    private final Variable name;
    private final Variable kind;
    private final Variable x;
    private final Variable y;
    private final Variable ground;
    private final Variable outlet;

    private StationVariables(Variable name, Variable kind, Variable x, Variable y, Variable ground, Variable outlet) {
        this.name = name;
        this.kind = kind;
        this.x = x;
        this.y = y;
        this.ground = ground;
        this.outlet = outlet;
    }

    static StationVariables define(GrowingFile file, RunDescription description) {
        file.dimension("station", description.stations().size());
        file.dimension("name_strlen", GrowingFile.longest(names(description)));
        return new StationVariables(
                file.variable(
                        "station_name",
                        DataType.CHAR,
                        "station name_strlen",
                        "cf_role",
                        "timeseries_id",
                        "long_name",
                        "name of the bore, spring or protected point",
                        "_Encoding",
                        "UTF-8"),
                kind(file),
                place(file, "x", "easting"),
                place(file, "y", "northing"),
                level(file, description, "ground_level", "level of the ground"),
                level(file, description, "outlet_level", "level from which water flows out by itself"));
    }

    private static List<String> names(RunDescription description) {
        return description.stations().stream().map(Station::name).toList();
    }

    private static Variable kind(GrowingFile file) {
        Variable kind = file.variable(
                "station_kind",
                DataType.BYTE,
                "station",
                "long_name",
                "what the station is",
                "flag_meanings",
                "bore spring protected_point");
        kind.addAttribute(
                new Attribute("flag_values", Array.factory(DataType.BYTE, new int[] {3}, new byte[] {0, 1, 2})));
        return kind;
    }

    /** No axis attribute: stations are no axis, and some readers refuse the file with it. */
    private static Variable place(GrowingFile file, String name, String longName) {
        return file.variable(
                name,
                DataType.DOUBLE,
                "station",
                "standard_name",
                "projection_" + name + "_coordinate",
                "long_name",
                longName,
                "units",
                "m");
    }

    private static Variable level(GrowingFile file, RunDescription description, String name, String longName) {
        Variable level = file.variable(
                name,
                DataType.DOUBLE,
                "station",
                "long_name",
                longName + " above " + description.datum(),
                "units",
                "m",
                "coordinates",
                COORDINATES);
        level.addAttribute(new Attribute("_FillValue", GrowingFile.DOUBLE_FILL));
        CommonVariables.placed(level, description);
        return level;
    }

    void write(GrowingFile file, RunDescription description) throws IOException {
        List<Station> stations = description.stations();
        file.writeNames(name, names(description));
        byte[] kinds = new byte[stations.size()];
        for (int i = 0; i < kinds.length; i++) {
            kinds[i] = kindOf(stations.get(i));
        }
        file.write(kind, new int[] {0}, Array.factory(DataType.BYTE, new int[] {kinds.length}, kinds));
        write(file, x, stations, Station::x);
        write(file, y, stations, Station::y);
        write(file, ground, stations, Station::groundLevel);
        write(file, outlet, stations, station -> station.outletLevel().orElse(GrowingFile.DOUBLE_FILL));
    }

    private static byte kindOf(Station station) {
        if (station instanceof Station.BoreSite) {
            return 0;
        }
        return (byte) (station instanceof Station.SpringSite ? 1 : 2);
    }

    private static void write(
            GrowingFile file, Variable variable, List<Station> stations, ToDoubleFunction<Station> value)
            throws IOException {
        file.writeDoubles(
                variable,
                new int[] {0},
                new int[] {stations.size()},
                stations.stream().mapToDouble(value).toArray());
    }
}
