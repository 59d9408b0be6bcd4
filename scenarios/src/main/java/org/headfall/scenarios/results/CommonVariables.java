package org.headfall.scenarios.results;

import java.time.format.DateTimeFormatter;
import java.util.TreeMap;
import org.headfall.scenarios.recording.MapReference;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import ucar.ma2.Array;
import ucar.ma2.DataType;
import ucar.nc2.Attribute;
import ucar.nc2.Variable;

/** Variables that both NetCDF files have: time and the grid mapping. */
final class CommonVariables {

    private static final DateTimeFormatter DATE_TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss");

    private CommonVariables() {}

    /** Units of time, counted from the start of the run. */
    static String timeUnits(RunCalendar calendar) {
        return "days since " + calendar.start().format(DATE_TIME);
    }

    static Variable time(GrowingFile file, RunCalendar calendar) {
        return file.variable(
                "time",
                DataType.DOUBLE,
                "time",
                "standard_name",
                "time",
                "long_name",
                "time since the start of the run",
                "units",
                timeUnits(calendar),
                "calendar",
                "standard",
                "axis",
                "T");
    }

    /** Adds the variable {@code crs}, if the run has a map reference. */
    static void gridMapping(GrowingFile file, RunDescription description) {
        if (description.mapReference().isEmpty()) {
            return;
        }
        MapReference reference = description.mapReference().get();
        Variable crs = file.variable("crs", DataType.INT, "", "long_name", reference.code());
        new TreeMap<>(reference.gridMapping()).forEach((name, value) -> crs.addAttribute(attribute(name, value)));
    }

    private static Attribute attribute(String name, Object value) {
        if (value instanceof double[] numbers) {
            return new Attribute(name, Array.factory(DataType.DOUBLE, new int[] {numbers.length}, numbers));
        }
        return value instanceof Number number
                ? new Attribute(name, number.doubleValue())
                : new Attribute(name, value.toString());
    }

    /** Marks data as lying in the grid mapping, if there is one. */
    static void placed(Variable variable, RunDescription description) {
        if (description.mapReference().isPresent()) {
            variable.addAttribute(new Attribute("grid_mapping", "crs"));
        }
    }
}
