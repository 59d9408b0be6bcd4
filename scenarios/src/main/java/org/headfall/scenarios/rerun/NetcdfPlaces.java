package org.headfall.scenarios.rerun;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ucar.ma2.Array;
import ucar.ma2.InvalidRangeException;
import ucar.nc2.Attribute;
import ucar.nc2.Dimension;
import ucar.nc2.NetcdfFile;
import ucar.nc2.Variable;

/**
 * Says in words where a value of a NetCDF file stands: by the date of its record, the names of stations, causes and terms,
 * and the coordinates of cells. The variables that say so are called after the dimension ({@code time}, {@code x}), or after
 * it with {@code _name}.
 */
final class NetcdfPlaces {

    private static final Pattern DAYS_SINCE = Pattern.compile("days since (\\d{4}-\\d{2}-\\d{2}).*");

    private final NetcdfFile file;

    NetcdfPlaces(NetcdfFile file) {
        this.file = file;
    }

    /** The variable and the place, such as {@code discharge (m3 d-1), time 2031-07-01, station Town 1}. */
    String words(Variable variable, int[] index) {
        List<String> words = new ArrayList<>();
        String unit = variable.getUnitsString();
        words.add(variable.getFullName() + (unit == null || unit.isBlank() ? "" : " (" + unit + ")"));
        for (int i = 0; i < index.length; i++) {
            words.add(words(variable.getDimension(i), index[i]));
        }
        return String.join(", ", words);
    }

    private String words(Dimension dimension, int at) {
        String name = dimension.getShortName();
        @Nullable Variable names = file.findVariable(name + "_name");
        @Nullable Variable coordinate = file.findVariable(name);
        try {
            if (names != null && names.getRank() == 2) {
                return name + " " + text(names.slice(0, at).read());
            }
            if (coordinate != null && coordinate.getRank() == 1) {
                return name + " " + value(coordinate, coordinate.read().getDouble(at));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InvalidRangeException impossible) {
            throw new IllegalStateException(impossible);
        }
        return name + " " + (at + 1);
    }

    private static String value(Variable coordinate, double value) {
        Attribute units = coordinate.findAttribute("units");
        String text = units == null ? "" : String.valueOf(units.getStringValue());
        Matcher days = DAYS_SINCE.matcher(text);
        return days.matches()
                ? LocalDate.parse(days.group(1))
                        .plusDays((long) Math.floor(value))
                        .toString()
                : value + (text.isBlank() ? "" : " " + text);
    }

    /** A text stored as zero-padded UTF-8 bytes. */
    static String text(Array characters) {
        byte[] bytes = new byte[(int) characters.getSize()];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) characters.getChar(i);
        }
        return new String(bytes, StandardCharsets.UTF_8).replace("\0", "");
    }
}
