package org.headfall.scenarios.sweep.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** The file of a sweep. For one thread; see {@link StoreWriter} for many. */
public final class SweepStore implements AutoCloseable {

    private final Path file;
    private final Connection connection;
    private final Optional<SweepLock> lock;
    private final List<String> figures;

    private SweepStore(Path file, Connection connection, Optional<SweepLock> lock) throws SQLException, StoreException {
        this.file = file;
        this.connection = connection;
        this.lock = lock;
        figures = figureColumns();
    }

    /**
     * Makes a store with all runs planned. The file appears under its name when it is whole.
     *
     * @param file the file, which must not exist
     * @param definition what the store is of
     * @return the store, locked for writing
     * @throws IOException if it cannot be written, or another process writes to it
     */
    public static SweepStore create(Path file, Definition definition) throws IOException {
        Files.createDirectories(Objects.requireNonNull(file.toAbsolutePath().getParent()));
        SweepLock lock = SweepLock.of(file);
        try {
            Path part = file.resolveSibling(file.getFileName() + ".part");
            Files.deleteIfExists(part);
            try (Connection connection = StoreForm.connect(part)) {
                StoreForm.write(connection, definition);
            }
            Files.move(part, file);
            return opened(file, Optional.of(lock));
        } catch (SQLException e) {
            lock.close();
            throw StoreException.of(file, e);
        } catch (IOException e) {
            lock.close();
            throw e;
        }
    }

    /**
     * Opens a store to record runs in it.
     *
     * @param file the file
     * @return the store, locked for writing
     * @throws IOException if it is no store, is of another form, or another process writes to it
     */
    public static SweepStore open(Path file) throws IOException {
        SweepLock lock = SweepLock.of(file);
        try {
            return opened(file, Optional.of(lock));
        } catch (IOException e) {
            lock.close();
            throw e;
        }
    }

    /**
     * Opens a store to look at it, also while another process writes to it.
     *
     * @param file the file
     * @return the store
     * @throws IOException if it is no store or of another form
     */
    public static SweepStore read(Path file) throws IOException {
        return opened(file, Optional.empty());
    }

    private static SweepStore opened(Path file, Optional<SweepLock> lock) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new StoreException(file, "no such store; headfall sweep makes it");
        }
        @Nullable Connection connection = null;
        try {
            connection = lock.isPresent() ? StoreForm.connect(file) : StoreForm.connectToRead(file);
            StoreForm.require(file, connection);
            if (lock.isPresent()) {
                StoreForm.requireSound(file, connection);
            }
            return new SweepStore(file, connection, lock);
        } catch (SQLException e) {
            close(connection);
            throw StoreException.of(file, e);
        } catch (StoreException e) {
            close(connection);
            throw e;
        }
    }

    private static void close(@Nullable Connection connection) {
        try {
            if (connection != null) {
                connection.close();
            }
        } catch (SQLException alreadyFailed) {
            // the first failure is the one to tell
        }
    }

    private List<String> figureColumns() throws SQLException {
        List<String> names = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet columns = statement.executeQuery("SELECT * FROM runs LIMIT 0")) {
            for (int i = StoreForm.FIGURES_AFTER + 1; i <= columns.getMetaData().getColumnCount(); i++) {
                names.add(columns.getMetaData().getColumnName(i));
            }
        }
        return Collections.unmodifiableList(names);
    }

    /** Heads of the columns of the kept figures. */
    public List<String> figures() {
        return figures;
    }

    /** The file. */
    public Path file() {
        return file;
    }

    /**
     * A text of the definition.
     *
     * @param name which text
     * @return the text; empty if there is none
     * @throws StoreException if the store cannot be read
     */
    public String text(String name) throws StoreException {
        try (PreparedStatement select = connection.prepareStatement("SELECT text FROM sweep WHERE name = ?")) {
            select.setString(1, name);
            try (ResultSet result = select.executeQuery()) {
                return result.next() ? result.getString(1) : "";
            }
        } catch (SQLException e) {
            throw StoreException.of(file, e);
        }
    }

    /**
     * How many runs are in which state.
     *
     * @throws StoreException if the store cannot be read
     */
    public Counts counts() throws StoreException {
        Map<String, Integer> counts = new TreeMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery("SELECT status, count(*) FROM runs GROUP BY status")) {
            while (result.next()) {
                counts.put(result.getString(1), result.getInt(2));
            }
        } catch (SQLException e) {
            throw StoreException.of(file, e);
        }
        return new Counts(
                counts.getOrDefault("planned", 0),
                counts.getOrDefault("finished", 0),
                counts.getOrDefault("failed", 0));
    }

    /**
     * Numbers of the runs that are to be made, in order.
     *
     * @throws StoreException if the store cannot be read
     */
    public List<Integer> planned() throws StoreException {
        List<Integer> numbers = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet result =
                        statement.executeQuery("SELECT number FROM runs WHERE status = 'planned' ORDER BY number")) {
            while (result.next()) {
                numbers.add(result.getInt(1));
            }
        } catch (SQLException e) {
            throw StoreException.of(file, e);
        }
        return numbers;
    }

    /**
     * Plans the failed runs again.
     *
     * @return how many there were
     * @throws StoreException if the store cannot be written
     */
    public int planFailedAgain() throws StoreException {
        try (Statement statement = connection.createStatement()) {
            return statement.executeUpdate("UPDATE runs SET status = 'planned', reason = NULL, way = NULL, seconds ="
                    + " NULL, finished = NULL, host = NULL, program = NULL WHERE status = 'failed'");
        } catch (SQLException e) {
            throw StoreException.of(file, e);
        }
    }

    /**
     * Hands over rows one after the other, in order of their numbers.
     *
     * @param rows receives them
     * @throws StoreException if the store cannot be read
     */
    public void forEach(Consumer<StoredRun> rows) throws StoreException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(StoreRows.SELECT + " ORDER BY number")) {
            StoreRows read = new StoreRows(file, result, figures.size());
            while (result.next()) {
                rows.accept(read.row());
            }
        } catch (SQLException e) {
            throw StoreException.of(file, e);
        }
    }

    /**
     * One row.
     *
     * @param number number of the run
     * @return the row, if there is one
     * @throws StoreException if the store cannot be read
     */
    public Optional<StoredRun> run(int number) throws StoreException {
        try (PreparedStatement select = connection.prepareStatement(StoreRows.SELECT + " WHERE number = ?")) {
            select.setInt(1, number);
            try (ResultSet result = select.executeQuery()) {
                return result.next()
                        ? Optional.of(new StoreRows(file, result, figures.size()).row())
                        : Optional.empty();
            }
        } catch (SQLException e) {
            throw StoreException.of(file, e);
        }
    }

    /**
     * Records runs in one transaction. A run that is no longer planned stays as it is.
     *
     * @param outcomes what came of the runs
     * @param program program and version that ran them
     * @return how many were recorded
     * @throws StoreException if the store cannot be written; then none of them is recorded
     */
    public int record(List<RunOutcome> outcomes, String program) throws StoreException {
        List<StoredRun> rows = new ArrayList<>();
        String now = Instant.now().truncatedTo(ChronoUnit.SECONDS).toString();
        for (RunOutcome outcome : outcomes) {
            rows.add(new StoredRun(
                    outcome.number(),
                    outcome.failed() ? StoredRun.Status.FAILED : StoredRun.Status.FINISHED,
                    "",
                    "",
                    outcome.figures(),
                    outcome.reason(),
                    outcome.way(),
                    outcome.seconds(),
                    now,
                    outcome.host(),
                    program,
                    outcome.maps()));
        }
        return copy(rows, StoreUpdate.Key.NUMBER);
    }

    /**
     * Takes over rows of another store of the same runs and figures. A run that is no longer planned here, or that has
     * another hash there, stays as it is.
     *
     * @param rows rows that are not planned any more
     * @return how many were taken over
     * @throws StoreException if the store cannot be written; then none of them is taken over
     */
    public int takeOver(List<StoredRun> rows) throws StoreException {
        return copy(rows, StoreUpdate.Key.HASH);
    }

    private int copy(List<StoredRun> rows, StoreUpdate.Key key) throws StoreException {
        try {
            return new StoreUpdate(connection, figures, key).write(rows);
        } catch (SQLException e) {
            throw StoreException.of(file, e);
        }
    }

    @Override
    public void close() throws IOException {
        try {
            connection.close();
        } catch (SQLException e) {
            throw StoreException.of(file, e);
        } finally {
            if (lock.isPresent()) {
                lock.get().close();
            }
        }
    }
}
