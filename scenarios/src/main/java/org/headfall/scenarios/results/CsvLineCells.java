package org.headfall.scenarios.results;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** The cells of one line of a table, added from left to right. */
public final class CsvLineCells {

    private static final DateTimeFormatter MINUTES = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm");
    private static final String FORMULA_STARTS = "=+-@\t\r";

    /** A number and nothing more than a unit after it: in this, no spreadsheet finds a call or a second operand. */
    private static final Pattern QUANTITY =
            Pattern.compile("[-+]?\\d+(\\.\\d+)?([eE][-+]?\\d+)?( ?[\\p{L}%°][\\p{L}\\d%°²³·/^]*)?");

    /** Powers of ten by which numbers are made whole; those with more decimals are rounded the slow way. */
    private static final double[] POWERS = {1, 10, 100, 1e3, 1e4, 1e5, 1e6};

    private final List<String> texts = new ArrayList<>();

    /** A line of texts. */
    public static CsvLineCells ofTexts(List<String> texts) {
        CsvLineCells cells = new CsvLineCells();
        texts.forEach(cells::text);
        return cells;
    }

    List<String> texts() {
        return texts;
    }

    /** The cells as people read them: numbers as the file has them, and texts as they were before they were made harmless. */
    public List<String> shown() {
        return texts.stream().map(CsvLineCells::original).toList();
    }

    /**
     * A text, made harmless for spreadsheets that would take it for a formula. A number, also one with a unit, stays as it is:
     * it is read by others as a number.
     */
    public CsvLineCells text(String text) {
        boolean formula = !text.isEmpty()
                && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0
                && !QUANTITY.matcher(text).matches();
        texts.add(formula ? "'" + text : text);
        return this;
    }

    /** A text as it was before {@link #text} made it harmless. */
    static String original(String cell) {
        boolean harmless = cell.length() > 1 && cell.charAt(0) == '\'' && FORMULA_STARTS.indexOf(cell.charAt(1)) >= 0;
        return harmless ? cell.substring(1) : cell;
    }

    /** A number with a fixed count of decimals; an empty cell if it is not finite. */
    public CsvLineCells number(double value, int decimals) {
        texts.add(Double.isFinite(value) ? rounded(value, decimals) : "");
        return this;
    }

    /** A number with a fixed count of decimals; an empty cell if it is absent. */
    public CsvLineCells number(OptionalDouble value, int decimals) {
        return number(value.orElse(Double.NaN), decimals);
    }

    /** A date; with the time of day where it is not midnight. */
    public CsvLineCells date(LocalDateTime date) {
        texts.add(
                date.toLocalTime().equals(LocalTime.MIDNIGHT)
                        ? date.toLocalDate().toString()
                        : date.format(MINUTES));
        return this;
    }

    /** The cells of another line. */
    CsvLineCells cells(CsvLineCells others) {
        texts.addAll(others.texts);
        return this;
    }

    /** An empty cell. */
    public CsvLineCells empty() {
        texts.add("");
        return this;
    }

    /**
     * A number with a fixed count of decimals, to the nearest, of two as near the even one; no zero has a minus.
     *
     * @param value a finite number
     * @param decimals how many decimals
     * @return its digits
     */
    static String rounded(double value, int decimals) {
        if (decimals < POWERS.length) {
            double scaled = value * POWERS[decimals];
            double whole = Math.rint(scaled);
            // The product is off by half of its last place at most: farther from the middle it is on the right side of
            // it.
            if (Math.abs(Math.abs(scaled - whole) - 0.5) > Math.ulp(scaled)) {
                return digits((long) whole, decimals);
            }
        }
        BigDecimal decimal = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN);
        // A BigDecimal has no minus zero, so -0.001 m rounds to 0.00.
        return decimal.toPlainString();
    }

    private static String digits(long scaled, int decimals) {
        if (decimals == 0) {
            return Long.toString(scaled);
        }
        long one = (long) POWERS[decimals];
        long size = Math.abs(scaled);
        StringBuilder text = new StringBuilder(Long.SIZE / 2);
        if (scaled < 0) {
            text.append('-');
        }
        // with a leading one, which is left out, all zeros of the decimals are there
        String fraction = Long.toString(one + size % one);
        return text.append(size / one)
                .append('.')
                .append(fraction, 1, fraction.length())
                .toString();
    }
}
