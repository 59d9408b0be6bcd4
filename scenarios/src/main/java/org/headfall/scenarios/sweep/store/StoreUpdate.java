package org.headfall.scenarios.sweep.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.util.List;
import java.util.stream.Collectors;

/** Writes what came of planned runs into their rows; rows that are no longer planned stay as they are. */
final class StoreUpdate {

    /** What says which row is meant. */
    enum Key {
        /** The number of the run. */
        NUMBER("number"),
        /** The hash of all that decides it: rows of another store may have other numbers. */
        HASH("hash");

        private final String column;

        Key(String column) {
            this.column = column;
        }
    }

    private final Connection connection;
    private final int figures;
    private final Key key;
    private final String sql;

    StoreUpdate(Connection connection, List<String> figures, Key key) {
        this.connection = connection;
        this.figures = figures.size();
        this.key = key;
        String assignments = figures.stream()
                .map(figure -> ", " + StoreForm.quoted(figure) + " = ?")
                .collect(Collectors.joining());
        sql =
                "UPDATE runs SET status = ?, reason = ?, way = ?, seconds = ?, finished = ?, host = ?, program = ?, maps = ?"
                        + assignments + " WHERE status = 'planned' AND " + key.column + " = ?";
    }

    /**
     * Writes rows in one transaction.
     *
     * @param rows the rows
     * @return how many were planned and are written now
     * @throws SQLException if one cannot be written; then none is
     */
    int write(List<StoredRun> rows) throws SQLException {
        connection.setAutoCommit(false);
        int written = 0;
        try (PreparedStatement update = connection.prepareStatement(sql)) {
            for (StoredRun row : rows) {
                fill(update, row);
                written += update.executeUpdate();
            }
            connection.commit();
        } catch (SQLException e) {
            rollBack();
            throw e;
        }
        connection.setAutoCommit(true);
        return written;
    }

    /** A full disk may have rolled back already. */
    private void rollBack() {
        try {
            connection.rollback();
            connection.setAutoCommit(true);
        } catch (SQLException alreadyRolledBack) {
            // nothing is recorded either way
        }
    }

    private void fill(PreparedStatement update, StoredRun row) throws SQLException {
        int next = 1;
        update.setString(next++, row.status().word());
        update.setString(next++, row.reason());
        update.setString(next++, row.way());
        setReal(update, next++, row.seconds());
        update.setString(next++, row.finished());
        update.setString(next++, row.host());
        update.setString(next++, row.program());
        if (row.maps().length > 0) {
            update.setBytes(next++, row.maps());
        } else {
            update.setNull(next++, Types.BLOB);
        }
        for (int i = 0; i < figures; i++) {
            setReal(update, next++, i < row.figures().length ? row.figures()[i] : Double.NaN);
        }
        if (key == Key.HASH) {
            update.setString(next, row.hash());
        } else {
            update.setInt(next, row.number());
        }
    }

    private static void setReal(PreparedStatement update, int place, double value) throws SQLException {
        if (Double.isNaN(value)) {
            update.setNull(place, Types.REAL);
        } else {
            update.setDouble(place, value);
        }
    }
}
