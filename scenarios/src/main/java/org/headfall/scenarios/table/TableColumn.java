package org.headfall.scenarios.table;

import java.util.Locale;
import java.util.Set;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;

/**
 * A column a table may have.
 *
 * @param title its name as messages show it: as the user typed it, or lower case with underscores
 * @param content what its cells hold
 * @param required whether the column has to be there and every cell filled
 */
public record TableColumn(String title, Content content, boolean required) {
    /** What the cells of a column hold. */
    public sealed interface Content {}

    /** Any text. */
    public record Text() implements Content {}

    /**
     * One of several words.
     *
     * @param words the words
     */
    public record Word(Set<String> words) implements Content {}

    /** Dates as year-month-day. */
    public record Date() implements Content {}

    /**
     * Quantities.
     *
     * @param dimension what they have to measure
     * @param range the range they have to lie in
     */
    public record Measure(Dimension dimension, AllowedRange range) implements Content {}

    /** A required column of texts. */
    public static TableColumn text(String title) {
        return new TableColumn(title, new Text(), true);
    }

    /** A required column of words. */
    public static TableColumn word(String title, Set<String> words) {
        return new TableColumn(title, new Word(words), true);
    }

    /** A required column of dates. */
    public static TableColumn date(String title) {
        return new TableColumn(title, new Date(), true);
    }

    /** A required column of quantities. */
    public static TableColumn quantity(String title, Dimension dimension, AllowedRange range) {
        return new TableColumn(title, new Measure(dimension, range), true);
    }

    /** The same column, which may be left out or have empty cells. */
    public TableColumn orNone() {
        return new TableColumn(title, content, false);
    }

    /** The name by which it is compared with others and found in a row. */
    public String name() {
        return plain(title);
    }

    /**
     * The name of a column as columns are compared: lower case, with underscores for spaces and hyphens.
     *
     * @param title name as typed
     */
    public static String plain(String title) {
        return title.strip().toLowerCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
    }
}
