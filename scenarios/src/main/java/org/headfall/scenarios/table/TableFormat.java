package org.headfall.scenarios.table;

import java.util.List;
import java.util.stream.Stream;

/**
 * The columns a table may have and how long it may be.
 *
 * @param columns the columns, in any order in the file
 * @param otherColumns whether columns that are not named here are passed over in silence
 * @param mostRows how many rows there may be
 */
public record TableFormat(List<TableColumn> columns, boolean otherColumns, long mostRows) {
    /** The most rows of a table unless said otherwise. */
    public static final long MOST_ROWS = 2_000_000;

    /** A table of exactly these columns. */
    public static TableFormat of(TableColumn... columns) {
        return new TableFormat(List.of(columns), false, MOST_ROWS);
    }

    /** The same table with further columns. */
    public TableFormat with(List<TableColumn> further) {
        return new TableFormat(Stream.concat(columns.stream(), further.stream()).toList(), otherColumns, mostRows);
    }

    /** The same table with other columns passed over. */
    public TableFormat withOtherColumns() {
        return new TableFormat(columns, true, mostRows);
    }

    /** The same table with another limit of its length. */
    public TableFormat withMostRows(long most) {
        return new TableFormat(columns, otherColumns, most);
    }

    /** The columns as messages show them. */
    List<String> titles() {
        return columns.stream().map(TableColumn::title).toList();
    }
}
