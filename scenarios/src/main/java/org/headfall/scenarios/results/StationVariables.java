package org.headfall.scenarios.results;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.reference.CoordinateReference;
import ucar.ma2.Array;
import ucar.ma2.DataType;
import ucar.nc2.Attribute;
import ucar.nc2.Variable;

/** Names, places and levels of the stations of {@code bores.nc}. */
final class StationVariables {

    private final Variable name;
    private final Variable kind;
    private final Variable x;
    private final Variable y;
    private final Variable ground;
    private final Variable outlet;
    private final Optional<Geographic> geographic;

    /** Longitude and latitude, on the datum of the grid mapping. */
    private record Geographic(Variable latitude, Variable longitude) {}

    private StationVariables(
            Variable name,
            Variable kind,
            Variable x,
            Variable y,
            Variable ground,
            Variable outlet,
            Optional<Geographic> geographic) {
        this.name = name;
        this.kind = kind;
        this.x = x;
        this.y = y;
        this.ground = ground;
        this.outlet = outlet;
        this.geographic = geographic;
    }

    /** Value of the attribute {@code coordinates}; with longitude and latitude where the run has a place on the Earth. */
    static String coordinates(RunDescription description) {
        return description.mapReference().isPresent() ? "lat lon x y station_name" : "x y station_name";
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
                level(file, description, "outlet_level", "level from which water flows out by itself"),
                description.mapReference().map(reference -> geographic(file)));
    }

    private static Geographic geographic(GrowingFile file) {
        return new Geographic(
                degrees(file, "lat", "latitude", "degrees_north"), degrees(file, "lon", "longitude", "degrees_east"));
    }

    private static Variable degrees(GrowingFile file, String name, String standardName, String units) {
        return file.variable(
                name,
                DataType.DOUBLE,
                "station",
                "standard_name",
                standardName,
                "long_name",
                standardName,
                "units",
                units);
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
                coordinates(description));
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
        if (geographic.isPresent() && description.mapReference().isPresent()) {
            CoordinateReference reference =
                    CoordinateReference.parse(description.mapReference().get().code());
            write(
                    file,
                    geographic.get().latitude(),
                    stations,
                    station -> place(reference, station).latitude());
            write(
                    file,
                    geographic.get().longitude(),
                    stations,
                    station -> place(reference, station).longitude());
        }
    }

    private static CoordinateReference.GeographicPosition place(CoordinateReference reference, Station station) {
        return reference.toGeographic(station.x(), station.y());
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
