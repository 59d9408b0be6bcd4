package org.headfall.scenarios.report.page;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One cell of a table.
 *
 * @param content what is shown
 * @param value number to sort by, empty for words; dates as ISO text
 * @param tone how it is marked
 */
public record Cell(Sentence content, String value, Tone tone) {

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
        return new Cell(Sentence.of(text), "", Tone.PLAIN);
    }

    /** A number of a column of numbers, whose heading says the unit. */
    static Cell number(Quantity quantity, double value) {
        String number = Double.isFinite(value) ? Double.toString(value) : "";
        return new Cell(Sentence.of(quantity.show(value)), number, Tone.PLAIN);
    }

    /** A figure with its unit, in a column of words. */
    static Cell figure(Sentence figure, double value) {
        return new Cell(figure, Double.isFinite(value) ? Double.toString(value) : "", Tone.PLAIN);
    }

    static Cell date(@Nullable LocalDate date, String otherwise) {
        return date == null ? text(otherwise) : new Cell(Sentence.of(Words.date(date)), date.toString(), Tone.PLAIN);
    }

    /** What is shown, as plain text. */
    public String text() {
        return content.text();
    }

    Cell marked(Tone mark) {
        return new Cell(content, value, mark);
    }
}
