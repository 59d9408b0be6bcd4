package org.headfall.scenarios.raster;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.jspecify.annotations.Nullable;

/**
 * ESRI ASCII grid: a header of keywords, then the values row by row from north to south.
 *
 * <p>The format lets values wrap over lines at will. Where the file has as many lines of values as rows, each line
 * must hold one row, since a row short of a value would otherwise shift all that follow.
 */
final class AsciiGridDecoder implements RasterDecoder {
    private static final double[] NO_VALUES = {};

    @Override
    public RasterFile decode(Path file, @Nullable String layer, RasterLimits limits) throws IOException {
        if (layer != null) {
            throw SpatialFormatException.of(
                    file, "layer \"" + layer + "\" asked of an ESRI ASCII grid", "no layer: it has one");
        }
        try (InputStream stream = Files.newInputStream(file)) {
            TokenReader tokens = new TokenReader(file, stream);
            AsciiGridHeader header = AsciiGridHeader.read(file, tokens, limits);
            double[] values = readValues(file, tokens, header);
            Raster raster = new Raster(
                    Raster.evenEdges(header.west(), header.width(), header.columns()),
                    Raster.evenEdges(header.south(), header.height(), header.rows()),
                    values);
            return new RasterFile(file, raster, OptionalInt.empty(), Optional.empty());
        } catch (IllegalArgumentException e) {
            throw SpatialFormatException.of(file, String.valueOf(e.getMessage()), "cells that ascend along x and y")
                    .causedBy(e);
        }
    }

    private static double[] readValues(Path file, TokenReader tokens, AsciiGridHeader header) throws IOException {
        int columns = header.columns();
        int rows = header.rows();
        // A value takes at least a digit and a blank: refuse before memory for the promised cells is reserved.
        boolean tooShort = 2L * columns * rows - 1 > Files.size(file);
        double[] values = tooShort ? NO_VALUES : new double[columns * rows];
        LineCounter lines = new LineCounter(columns);
        int count = 0;
        for (boolean more = !tokens.text().isEmpty(); more; more = tokens.advance()) {
            if (count == columns * rows) {
                throw tokens.fault(
                        tokens.quoted() + " after the last of " + columns + " x " + rows + " values" + lines.suspect(),
                        "nothing after the last value");
            }
            double value = value(tokens);
            if (!tooShort) {
                int rowFromNorth = count / columns;
                values[(rows - 1 - rowFromNorth) * columns + count % columns] =
                        isNoData(value, header.noData()) ? Double.NaN : value;
            }
            lines.count(tokens.line());
            count++;
        }
        requireAll(file, header, count, lines);
        return values;
    }

    private static void requireAll(Path file, AsciiGridHeader header, int count, LineCounter lines) {
        int expected = header.columns() * header.rows();
        if (count < expected) {
            throw SpatialFormatException.at(
                    file, lines.suspectLine(), 0, count + " values" + lines.suspect(), counts(header));
        }
        if (lines.lines == header.rows() && lines.suspectLine() > 0) {
            throw SpatialFormatException.at(
                    file, lines.suspectLine(), 0, "a row of wrong length" + lines.suspect(), counts(header));
        }
    }

    private static String counts(AsciiGridHeader header) {
        return "ncols x nrows = " + header.columns() + " x " + header.rows() + " = " + header.columns() * header.rows()
                + " values";
    }

    /** Whether a word can stand among the values, so that the header has ended. */
    static boolean isValue(String text) {
        char first = text.charAt(0);
        return (first >= '0' && first <= '9')
                || first == '-'
                || first == '+'
                || first == '.'
                || text.equalsIgnoreCase("nan");
    }

    /** The number at the reader's place; NaN for the spellings of "not a number" in use. */
    static double value(TokenReader tokens) {
        String text = tokens.text();
        if (text.equalsIgnoreCase("nan") || text.equalsIgnoreCase("-nan") || text.contains("#")) {
            return requireNanSpelling(tokens, text);
        }
        return finiteValue(tokens, "a number, or the NODATA value");
    }

    private static double requireNanSpelling(TokenReader tokens, String text) {
        if (text.contains("#") && !text.matches("-?1\\.#(QNAN|IND|SNAN)0*")) {
            throw tokens.fault(tokens.quoted(), "a number, or the NODATA value");
        }
        return Double.NaN;
    }

    /** The finite number at the reader's place. */
    static double finiteValue(TokenReader tokens, String allowed) {
        String text = tokens.text();
        double value = Double.NaN;
        // Double.parseDouble also takes "1f" and hexadecimal numbers, which are typing errors here.
        if (isDecimal(text)) {
            try {
                value = Double.parseDouble(text);
            } catch (NumberFormatException e) {
                value = Double.NaN;
            }
        }
        if (!Double.isFinite(value)) {
            String hint = text.matches("[-+]?[0-9]+,[0-9]+") ? " with a decimal point, not a comma" : "";
            throw tokens.fault(tokens.quoted(), allowed + hint);
        }
        return value;
    }

    /** Whether a text has a sign at most, digits and points, and a power of ten at most: a map has thousands of them. */
    private static boolean isDecimal(String text) {
        int digits = afterSign(text, 0);
        int end = digits;
        while (end < text.length() && (text.charAt(end) == '.' || isDigit(text.charAt(end)))) {
            end++;
        }
        if (end == digits || end == text.length()) {
            return end > digits;
        }
        return (text.charAt(end) == 'e' || text.charAt(end) == 'E') && isWhole(text, afterSign(text, end + 1));
    }

    private static int afterSign(String text, int at) {
        boolean sign = at < text.length() && (text.charAt(at) == '-' || text.charAt(at) == '+');
        return sign ? at + 1 : at;
    }

    private static boolean isWhole(String text, int from) {
        for (int at = from; at < text.length(); at++) {
            if (!isDigit(text.charAt(at))) {
                return false;
            }
        }
        return from < text.length();
    }

    private static boolean isDigit(char letter) {
        return letter >= '0' && letter <= '9';
    }

    /**
     * Equal up to the rounding of single precision, since programs print the least float, a usual mark, with
     * different numbers of digits.
     */
    static boolean isNoData(double value, double noData) {
        return value == noData || (Math.abs(noData) > 1e30 && Math.abs(value - noData) < 1e-5 * Math.abs(noData));
    }

    /** Counts values per line to name the first line that is not one row. */
    private static final class LineCounter {
        private final int columns;
        private int current;
        private int inCurrent;
        private int lines;
        private int suspectLine;
        private int suspectCount;

        LineCounter(int columns) {
            this.columns = columns;
        }

        void count(int line) {
            if (line != current) {
                close();
                current = line;
                inCurrent = 0;
                lines++;
            }
            inCurrent++;
        }

        int suspectLine() {
            close();
            return suspectLine;
        }

        String suspect() {
            return suspectLine() == 0
                    ? ""
                    : " (line " + suspectLine + " holds " + suspectCount + ", the first that is not " + columns + ")";
        }

        private void close() {
            if (current > 0 && suspectLine == 0 && inCurrent != columns) {
                suspectLine = current;
                suspectCount = inCurrent;
            }
        }
    }
}
