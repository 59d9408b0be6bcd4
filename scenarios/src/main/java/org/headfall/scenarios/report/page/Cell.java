package org.headfall.scenarios.report.page;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One cell of a table.
 *
 * @param text what is shown
 * @param value number behind the text, empty for words; dates as ISO text
 * @param tone how it is marked
 */
public record Cell(String text, String value, Tone tone) {

    /** How a cell is marked, beside its words. */
    public enum Tone {
        /** Not at all. */
        PLAIN(""),
        /** Something is wrong. */
        BAD("bad"),
        /** Close to wrong. */
        CLOSE("close"),
        /** As wished. */
        GOOD("good");

        private final String styleClass;

        Tone(String styleClass) {
            this.styleClass = styleClass;
        }

        /** Class in the style sheet. */
        public String styleClass() {
            return styleClass;
        }
    }

    static Cell text(String text) {
        return new Cell(text, "", Tone.PLAIN);
    }

    static Cell number(Quantity quantity, double value) {
        return new Cell(quantity.show(value), Double.isFinite(value) ? Double.toString(value) : "", Tone.PLAIN);
    }

    static Cell date(@Nullable LocalDate date, String otherwise) {
        return date == null ? text(otherwise) : new Cell(Words.date(date), date.toString(), Tone.PLAIN);
    }

    Cell marked(Tone mark) {
        return new Cell(text, value, mark);
    }
}
