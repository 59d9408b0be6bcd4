package org.headfall.scenarios.planning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A table of a page; its first column names the row.
 *
 * @param id unique name, letters and hyphens
 * @param caption what it shows
 * @param file the file beside the page that holds the same rows
 * @param header headings, a unit in brackets at the end
 * @param rows cells, as many a row as there are headings
 * @param notes how to read it, a paragraph each; above it
 */
public record PlanningTable(
        String id, String caption, String file, List<String> header, List<List<String>> rows, List<String> notes) {

    private static final Pattern WITH_UNIT = Pattern.compile("(.+) \\(([^()]+)\\)");
    private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?|NaN|Infinity|");
    private static final int LONGEST_ON_ONE_LINE = 12;
    private static final int LONG = 24;
    private static final int MOST_ROWS_ON_PAPER = 60;

    /** What the width of A4 between its margins holds of letters of the size of tables, rims of cells counted. */
    private static final int MOST_LETTERS_ON_PAPER = 130;

    private static final int LETTERS_OF_A_RIM = 2;

    /** Copies the lists. */
    public PlanningTable {
        header = List.copyOf(header);
        rows = rows.stream().map(List::copyOf).toList();
        notes = List.copyOf(notes);
    }

    /** A table that says by itself how to read it. */
    public PlanningTable(String id, String caption, String file, List<String> header, List<List<String>> rows) {
        this(id, caption, file, header, rows, List.of());
    }

    /**
     * A column.
     *
     * @param title heading without the unit
     * @param unit unit; empty for none
     * @param style classes of its heading and cells
     */
    public record Column(String title, String unit, String style) {

        /** Classes of the heading: more room where it has several words, so that it does not stand tall. */
        public String headStyle() {
            return title.length() > LONGEST_ON_ONE_LINE ? style + " several-words" : style;
        }
    }

    /** The columns, looked at as a whole. */
    public List<Column> columns() {
        List<Column> columns = new ArrayList<>();
        for (int i = 0; i < header.size(); i++) {
            Matcher matcher = WITH_UNIT.matcher(header.get(i));
            boolean hasUnit = matcher.matches();
            columns.add(
                    new Column(hasUnit ? matcher.group(1) : header.get(i), hasUnit ? matcher.group(2) : "", style(i)));
        }
        return columns;
    }

    private String style(int column) {
        int longest =
                rows.stream().mapToInt(row -> row.get(column).length()).max().orElse(0);
        if (longest > 0
                && rows.stream().allMatch(row -> NUMBER.matcher(row.get(column)).matches())) {
            return "number";
        }
        return longest <= LONGEST_ON_ONE_LINE ? "brief" : longest <= LONG ? "words" : "long";
    }

    /** Whether it is left out on paper, where it would fill pages or reach beyond them; the file holds it. */
    public boolean isOnScreenOnly() {
        int letters = 0;
        for (int column = 0; column < header.size(); column++) {
            letters += LETTERS_OF_A_RIM + longestWord(column);
        }
        return rows.size() > MOST_ROWS_ON_PAPER || letters > MOST_LETTERS_ON_PAPER;
    }

    /** Letters of the longest word of a column, its heading included: no line of it can be narrower. */
    private int longestWord(int column) {
        return Stream.concat(Stream.of(header.get(column)), rows.stream().map(row -> row.get(column)))
                .flatMap(text -> Arrays.stream(text.split(" ", -1)))
                .mapToInt(String::length)
                .max()
                .orElse(0);
    }
}
