package org.headfall.scenarios.report.page;

import java.util.List;

/**
 * A table of the page. The first column names the row.
 *
 * @param id unique name for links, letters and hyphens
 * @param caption what it shows, with the date
 * @param columns headings with their quantities
 * @param rows cells, as many a row as there are columns
 * @param shaded columns after the first whose cells are shaded by their numbers
 */
public record PageTable(String id, String caption, List<Column> columns, List<List<Cell>> rows, int shaded) {

    /** A table without shades. */
    PageTable(String id, String caption, List<Column> columns, List<List<Cell>> rows) {
        this(id, caption, columns, rows, 0);
    }

    /** Copies the lists. */
    public PageTable {
        columns = List.copyOf(columns);
        rows = rows.stream().map(List::copyOf).toList();
    }

    /**
     * Heading of a column.
     *
     * @param title what it holds, in words
     * @param quantity quantity and unit
     */
    public record Column(String title, Quantity quantity) {}
}
