package org.headfall.scenarios.sweep.store;

import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Reads rows of the table of runs. Anybody can change a SQLite file by hand, so nothing of a row is taken for granted. */
final class StoreRows {

    private static final String IS_JSON = "inputs are JSON";

    /** Begins a query whose result this class reads. */
    static final String SELECT = "SELECT *, json_valid(inputs) AS " + StoreForm.quoted(IS_JSON) + " FROM runs";

    private final Path file;
    private final ResultSet result;
    private final int figures;

    /**
     * A reader.
     *
     * @param file the store, for messages
     * @param result rows of {@link #SELECT}
     * @param figures number of columns of figures
     */
    StoreRows(Path file, ResultSet result, int figures) {
        this.file = file;
        this.result = result;
        this.figures = figures;
    }

    /**
     * The row that the result stands at.
     *
     * @throws StoreException if it is not as it was written; the message names row, column, what is there and what may be
     */
    StoredRun row() throws SQLException, StoreException {
        int number = result.getInt("number");
        if (number < 1) {
            throw wrong(number, "number", String.valueOf(number), "the number of a run, from 1");
        }
        if (result.getInt(IS_JSON) == 0) {
            throw wrong(number, "inputs", text("inputs"), "a JSON object with the value of each variable");
        }
        double[] values = new double[figures];
        for (int i = 0; i < values.length; i++) {
            values[i] = real(number, StoreForm.FIGURES_AFTER + 1 + i);
        }
        return new StoredRun(
                number,
                status(number),
                text("inputs"),
                text("hash"),
                values,
                text("reason"),
                text("way"),
                real(number, result.findColumn("seconds")),
                text("finished"),
                text("host"),
                text("program"),
                bytes("maps"));
    }

    private byte[] bytes(String column) throws SQLException {
        byte @Nullable [] found = result.getBytes(column);
        return found == null ? new byte[0] : found;
    }

    private StoredRun.Status status(int number) throws SQLException, StoreException {
        String word = text("status");
        Optional<StoredRun.Status> status = StoredRun.Status.of(word);
        if (status.isEmpty()) {
            List<StoredRun.Status> words = Arrays.asList(StoredRun.Status.values());
            String allowed = words.stream().map(StoredRun.Status::word).collect(Collectors.joining(", "));
            throw wrong(number, "status", word, "one of " + allowed);
        }
        return status.get();
    }

    private String text(String column) throws SQLException {
        @Nullable String text = result.getString(column);
        return text == null ? "" : text;
    }

    /** A number, NaN where there is none. */
    private double real(int number, int column) throws SQLException, StoreException {
        @Nullable Object value = result.getObject(column);
        if (value == null) {
            return Double.NaN;
        }
        if (value instanceof Number real) {
            return real.doubleValue();
        }
        throw wrong(number, result.getMetaData().getColumnName(column), String.valueOf(value), "a number, or nothing");
    }

    private StoreException wrong(int number, String column, String found, String allowed) {
        return new StoreException(
                file,
                "row " + number + " of the table runs is not as headfall wrote it: " + column + " is " + found
                        + "; allowed: " + allowed
                        + ". Mend the row, or move the file away to begin anew");
    }
}
