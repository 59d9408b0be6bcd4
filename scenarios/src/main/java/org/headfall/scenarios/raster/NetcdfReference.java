package org.headfall.scenarios.raster;

import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ucar.nc2.Attribute;
import ucar.nc2.NetcdfFile;
import ucar.nc2.Variable;

/** The EPSG code in the grid mapping of a NetCDF variable (CF 1.8, section 5.6). */
final class NetcdfReference {
    /** The identifier that closes the text, which belongs to the whole system and not to a part of it. */
    private static final Pattern LAST_IDENTIFIER =
            Pattern.compile("(?:AUTHORITY|ID)\\s*\\[\\s*\"EPSG\"\\s*,\\s*\"?([0-9]{4,6})\"?\\s*\\]\\s*\\]\\s*$");

    private NetcdfReference() {}

    static OptionalInt epsgCode(NetcdfFile netcdf, Variable variable) {
        Attribute name = variable.findAttribute("grid_mapping");
        String text = name == null ? null : name.getStringValue();
        if (text == null) {
            return OptionalInt.empty();
        }
        for (Variable candidate : netcdf.getVariables()) {
            // Both "crs" and the longer "crs: x y" name the variable.
            if (candidate.getShortName().equals(text.split("[: ]", 2)[0])) {
                return epsgCode(candidate);
            }
        }
        return OptionalInt.empty();
    }

    private static OptionalInt epsgCode(Variable mapping) {
        for (String name : new String[] {"crs_wkt", "spatial_ref"}) {
            Attribute attribute = mapping.findAttribute(name);
            String wkt = attribute == null ? null : attribute.getStringValue();
            if (wkt != null) {
                Matcher matcher = LAST_IDENTIFIER.matcher(wkt);
                if (matcher.find()) {
                    return OptionalInt.of(Integer.parseInt(matcher.group(1)));
                }
            }
        }
        return OptionalInt.empty();
    }
}
