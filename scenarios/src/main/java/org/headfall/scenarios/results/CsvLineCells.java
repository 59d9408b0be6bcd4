package org.headfall.scenarios.results;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** The cells of one line of a table, added from left to right. */
public final class CsvLineCells {

    private static final DateTimeFormatter MINUTES = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm");
    private static final String FORMULA_STARTS = "=+-@\t\r";

    private final List<String> texts = new ArrayList<>();

    List<String> texts() {
        return texts;
    }

    /** A text, made harmless for spreadsheets that would take it for a formula. */
    public CsvLineCells text(String text) {
        boolean formula = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
        texts.add(formula ? "'" + text : text);
        return this;
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

    /** An empty cell. */
    public CsvLineCells empty() {
        texts.add("");
        return this;
    }

    private static String rounded(double value, int decimals) {
        BigDecimal decimal = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN);
        // A BigDecimal has no minus zero, so -0.001 m rounds to 0.00.
        return decimal.toPlainString();
    }
}
