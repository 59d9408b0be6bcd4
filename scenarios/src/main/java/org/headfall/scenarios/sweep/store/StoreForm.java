package org.headfall.scenarios.sweep.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** How a sweep lies in its SQLite file: marks, tables and columns, and how the file is opened. */
final class StoreForm {

    /** Form of the file; another form is refused. */
    private static final int FORM = 2;

    /** Marks the file as ours ("HFsw"), as the SQLite file format provides. */
    private static final int APPLICATION = 0x48467377;

    private static final String FIXED_COLUMNS =
            "number INTEGER PRIMARY KEY, status TEXT NOT NULL, inputs TEXT NOT NULL, hash TEXT NOT NULL, reason TEXT,"
                    + " way TEXT, seconds REAL, finished TEXT, host TEXT, program TEXT, maps BLOB";
    /** Number of columns before those of the figures. */
    static final int FIGURES_AFTER = 11;

    private static final int BUSY_MILLISECONDS = 10_000;

    private StoreForm() {}

    /** Opens a file so that what is committed outlives a power cut. */
    static Connection connect(Path file) throws SQLException {
        Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file.toAbsolutePath());
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA busy_timeout = " + BUSY_MILLISECONDS);
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = FULL");
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
        return connection;
    }

    /**
     * Opens a file to look at it. Where nothing can be written, as in the folder of somebody else, and nobody writes, it is
     * taken to stay as it is: SQLite would want to make a file beside it.
     */
    static Connection connectToRead(Path file) throws SQLException {
        Path folder = Objects.requireNonNull(file.toAbsolutePath().getParent());
        if (Files.isWritable(folder) && Files.isWritable(file)) {
            return connect(file);
        }
        boolean open = Files.exists(file.resolveSibling(file.getFileName() + "-wal"));
        String uri = "jdbc:sqlite:" + file.toUri().toString().replaceFirst("^file:/+", "file:/");
        Connection connection = DriverManager.getConnection(uri + (open ? "?mode=ro" : "?immutable=1"));
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA busy_timeout = " + BUSY_MILLISECONDS);
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
        return connection;
    }

    /** Requires the pages of the file to hold what their heads say, before anything is added to it. */
    static void requireSound(Path file, Connection connection) throws SQLException, StoreException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery("PRAGMA quick_check(1)")) {
            String found = result.next() ? result.getString(1) : "";
            if (!found.equals("ok")) {
                throw new StoreException(file, "is damaged; put a copy of it back, or move it away to begin anew");
            }
        }
    }

    /** Requires the file to be a store of this form. */
    static void require(Path file, Connection connection) throws SQLException, StoreException {
        if (number(connection, "PRAGMA application_id") != APPLICATION) {
            throw new StoreException(file, "is no store of a sweep; move it away or choose another folder");
        }
        int form = number(connection, "PRAGMA user_version");
        if (form != FORM) {
            throw new StoreException(
                    file,
                    "was written by another version (form " + form + ", this version reads " + FORM
                            + "); use that version, or begin anew in another folder");
        }
    }

    private static int number(Connection connection, String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(query)) {
            return result.next() ? result.getInt(1) : 0;
        }
    }

    /** Makes the tables with all runs planned, in one transaction. */
    static void write(Connection connection, Definition definition) throws SQLException {
        connection.setAutoCommit(false);
        String columns = definition.figures().stream()
                .map(figure -> ", " + quoted(figure) + " REAL")
                .collect(Collectors.joining());
        try (Statement statement = connection.createStatement()) {
            statement.execute("CREATE TABLE sweep (name TEXT PRIMARY KEY, text TEXT NOT NULL)");
            statement.execute("CREATE TABLE runs (" + FIXED_COLUMNS + columns + ")");
            statement.execute("CREATE INDEX runs_by_status ON runs (status)");
            statement.execute("PRAGMA application_id = " + APPLICATION);
            statement.execute("PRAGMA user_version = " + FORM);
        }
        try (PreparedStatement insert = connection.prepareStatement("INSERT INTO sweep VALUES (?, ?)")) {
            for (Map.Entry<String, String> text : new TreeMap<>(definition.texts()).entrySet()) {
                insert.setString(1, text.getKey());
                insert.setString(2, text.getValue());
                insert.executeUpdate();
            }
        }
        try (PreparedStatement insert = connection.prepareStatement(
                "INSERT INTO runs (number, status, inputs, hash) VALUES (?, 'planned', ?, ?)")) {
            for (Definition.PlannedRun run : definition.runs()) {
                insert.setInt(1, run.number());
                insert.setString(2, run.inputs());
                insert.setString(3, run.hash());
                insert.executeUpdate();
            }
        }
        connection.commit();
    }

    /** A name as SQL takes it. */
    static String quoted(String name) {
        return '"' + name.replace("\"", "\"\"") + '"';
    }
}
