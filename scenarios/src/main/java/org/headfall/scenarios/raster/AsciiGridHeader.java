package org.headfall.scenarios.raster;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.headfall.solver.wording.PlainNumber;
import org.jspecify.annotations.Nullable;

/**
 * The keywords above the values of an ESRI ASCII grid.
 *
 * @param columns number of columns
 * @param rows number of rows
 * @param west edge of the first column (m)
 * @param south edge of the last row (m)
 * @param width length of a cell along x (m)
 * @param height length of a cell along y (m)
 * @param noData the value that marks a hole
 */
record AsciiGridHeader(int columns, int rows, double west, double south, double width, double height, double noData) {
    /** The format's own value where the keyword is left out. */
    private static final double DEFAULT_NO_DATA = -9999;

    private static final Set<String> KEYWORDS = Set.of(
            "ncols",
            "nrows",
            "xllcorner",
            "yllcorner",
            "xllcenter",
            "yllcenter",
            "cellsize",
            "dx",
            "dy",
            "nodata_value");
    private static final String ALLOWED =
            "ncols, nrows, xllcorner and yllcorner (or xllcenter and yllcenter), cellsize, nodata_value";

    /** Reads the keywords; the token reader is left on the first value. */
    static AsciiGridHeader read(Path file, TokenReader tokens, RasterLimits limits) throws IOException {
        Map<String, Double> entries = new LinkedHashMap<>();
        boolean more = tokens.advance();
        while (more && !AsciiGridDecoder.isValue(tokens.text())) {
            readEntry(tokens, entries);
            more = tokens.advance();
        }
        return of(new Entries(file, entries), limits);
    }

    private static void readEntry(TokenReader tokens, Map<String, Double> entries) throws IOException {
        String keyword = tokens.text().toLowerCase(Locale.ROOT);
        if (!KEYWORDS.contains(keyword)) {
            String what = entries.isEmpty() ? "which does not begin an ESRI ASCII grid" : "which is no header keyword";
            throw tokens.fault(tokens.quoted() + ", " + what, ALLOWED);
        }
        if (!tokens.advance()) {
            throw tokens.fault("the end of the file after " + keyword, "a number");
        }
        double value = keyword.equals("nodata_value")
                ? AsciiGridDecoder.value(tokens)
                : AsciiGridDecoder.finiteValue(tokens, "a number for " + keyword);
        if (entries.put(keyword, value) != null) {
            throw tokens.fault(keyword + " twice", "each keyword once");
        }
    }

    private static AsciiGridHeader of(Entries entries, RasterLimits limits) {
        int columns = entries.count("ncols");
        int rows = entries.count("nrows");
        limits.requireCells(entries.file, columns, rows);
        Double cellSize = entries.get("cellsize");
        double width = entries.length("dx", cellSize);
        double height = entries.length("dy", cellSize);
        boolean centres = entries.usesCentres();
        String suffix = centres ? "center" : "corner";
        double x = entries.required("xll" + suffix);
        double y = entries.required("yll" + suffix);
        Double noData = entries.get("nodata_value");
        return new AsciiGridHeader(
                columns,
                rows,
                centres ? x - 0.5 * width : x,
                centres ? y - 0.5 * height : y,
                width,
                height,
                noData == null ? DEFAULT_NO_DATA : noData);
    }

    private record Entries(Path file, Map<String, Double> values) {

        @Nullable
        Double get(String keyword) {
            return values.get(keyword);
        }

        double required(String keyword) {
            Double value = values.get(keyword);
            if (value == null) {
                throw SpatialFormatException.of(
                        file, "a grid header without " + keyword + " (it has " + values.keySet() + ")", ALLOWED);
            }
            return value;
        }

        int count(String keyword) {
            double value = required(keyword);
            if (value != Math.rint(value) || value < 1 || value > Integer.MAX_VALUE) {
                throw SpatialFormatException.of(
                        file, keyword + " " + PlainNumber.of(value), "a whole number of at least 1");
            }
            return (int) value;
        }

        double length(String keyword, @Nullable Double cellSize) {
            Double own = values.get(keyword);
            Double value = own != null ? own : cellSize;
            if (value == null) {
                throw SpatialFormatException.of(file, "a grid header without cellsize", ALLOWED);
            }
            if (value <= 0) {
                throw SpatialFormatException.of(
                        file, "a cell of " + PlainNumber.of(value) + " m", "a cell size above 0 m");
            }
            return value;
        }

        boolean usesCentres() {
            boolean centreX = values.containsKey("xllcenter");
            boolean centreY = values.containsKey("yllcenter");
            boolean corner = values.containsKey("xllcorner") || values.containsKey("yllcorner");
            if (((centreX || centreY) && corner) || centreX != centreY) {
                throw SpatialFormatException.of(
                        file,
                        "corner and centre keywords mixed (" + values.keySet() + ")",
                        "xllcorner with yllcorner, or xllcenter with yllcenter");
            }
            return centreX;
        }
    }
}
