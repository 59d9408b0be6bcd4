package org.headfall.scenarios.sweep.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SweepStoreTest {

    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("sweep.sqlite");
    }

    private static Definition definition(int runs) {
        List<Definition.PlannedRun> planned = new ArrayList<>();
        for (int i = 1; i <= runs; i++) {
            planned.add(new Definition.PlannedRun(i, "{}", "hash " + i));
        }
        return new Definition(Map.of(Definition.TITLE, "A test"), List.of("loss at \"Spring\" (m)", "other"), planned);
    }

    private static RunOutcome outcome(int number, double figure) {
        return RunOutcome.finished(number, new double[] {figure, Double.NaN}, "simulated", 0.5, "a host");
    }

    @Test
    void keepsTheFirstOutcomeOfARun() throws IOException {
        try (SweepStore store = SweepStore.create(file(), definition(3))) {
            assertEquals(1, store.record(List.of(outcome(2, 1.25)), "this"));
            assertEquals(0, store.record(List.of(outcome(2, 7)), "this"));
            assertEquals(0, store.record(List.of(outcome(9, 7)), "this"));
            assertEquals(List.of(1, 3), store.planned());
        }
        try (SweepStore store = SweepStore.read(file())) {
            StoredRun run = store.run(2).orElseThrow();
            assertArrayEquals(new double[] {1.25, Double.NaN}, run.figures());
            assertEquals(StoredRun.Status.FINISHED, run.status());
            assertEquals("a host", run.host());
            assertEquals(List.of("loss at \"Spring\" (m)", "other"), store.figures());
            assertEquals("A test", store.text(Definition.TITLE));
            assertEquals(new Counts(2, 1, 0), store.counts());
        }
    }

    @Test
    void recordsEveryRunOnceFromManyThreads() throws IOException, InterruptedException {
        int runs = 2000;
        try (SweepStore store = SweepStore.create(file(), definition(runs))) {
            try (StoreWriter writer = new StoreWriter(store, "this")) {
                List<Thread> threads = new ArrayList<>();
                for (int t = 0; t < 4; t++) {
                    int first = t + 1;
                    Thread thread = new Thread(() -> {
                        for (int i = first; i <= runs; i += 4) {
                            try {
                                writer.add(outcome(i, i));
                            } catch (StoreException | InterruptedException e) {
                                throw new IllegalStateException(e);
                            }
                        }
                    });
                    thread.start();
                    threads.add(thread);
                }
                for (Thread thread : threads) {
                    thread.join();
                }
            }
            Set<Integer> found = new TreeSet<>();
            store.forEach(row -> {
                assertEquals(row.number(), row.figures()[0]);
                found.add(row.number());
            });
            assertEquals(runs, found.size());
            assertEquals(new Counts(0, runs, 0), store.counts());
        }
    }

    @Test
    void refusesWhatIsNoStore() throws IOException, SQLException {
        Files.writeString(file(), "not a database, but long enough to be read as the head of one".repeat(20));
        assertSays("no store of a sweep", assertThrows(StoreException.class, () -> SweepStore.open(file())));
        Files.delete(file());
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = other.createStatement()) {
            statement.execute("CREATE TABLE birds (name TEXT)");
        }
        assertSays("no store of a sweep", assertThrows(StoreException.class, () -> SweepStore.open(file())));
        assertSays("no such store", assertThrows(StoreException.class, () -> SweepStore.read(folder.resolve("x"))));
    }

    /** A page in the middle was overwritten, which a look at the head of the file does not show. */
    @Test
    void refusesADamagedStoreBeforeAnythingIsAddedToIt() throws IOException {
        SweepStore.create(file(), definition(2000)).close();
        byte[] bytes = Files.readAllBytes(file());
        int page = 4096;
        int middle = bytes.length / (2 * page) * page;
        Arrays.fill(bytes, middle, middle + page, (byte) 'x');
        Files.write(file(), bytes);
        assertSays("damaged", assertThrows(StoreException.class, () -> SweepStore.open(file())));
    }

    @Test
    void refusesAStoreOfAnotherForm() throws IOException, SQLException {
        SweepStore.create(file(), definition(1)).close();
        try (Connection later = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = later.createStatement()) {
            statement.execute("PRAGMA user_version = 99");
        }
        assertSays(
                "was written by another version (form 99, this version reads 2)",
                assertThrows(StoreException.class, () -> SweepStore.open(file())));
    }

    /** Whoever opens the file with another program can write anything; row, column and what stands there are told. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            status = 'done'            | status is done; allowed: one of planned, finished, failed
            inputs = 'nonsense'        | inputs is nonsense; allowed: a JSON object
            other = 'much'             | other is much; allowed: a number, or nothing
            seconds = 'long'           | seconds is long; allowed: a number, or nothing
            number = -4                | number is -4; allowed: the number of a run, from 1
            """)
    void saysWhichRowWasSpoilt(String change, String words) throws IOException, SQLException {
        SweepStore.create(file(), definition(3)).close();
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = other.createStatement()) {
            statement.execute("UPDATE runs SET " + change + " WHERE number = 2");
        }
        try (SweepStore store = SweepStore.read(file())) {
            StoreException refused = assertThrows(StoreException.class, () -> store.forEach(row -> {}));
            assertSays(words, refused);
            assertSays(change.startsWith("number") ? "row -4 " : "row 2 of the table runs", refused);
        }
    }

    @Test
    void keepsASecondWriterOff() throws IOException {
        try (SweepStore first = SweepStore.create(file(), definition(1))) {
            assertSays("another sweep is writing", assertThrows(StoreException.class, () -> SweepStore.open(file())));
            try (SweepStore reader = SweepStore.read(file())) {
                assertEquals(first.counts(), reader.counts());
            }
        }
        SweepStore.open(file()).close();
    }

    private static void assertSays(String words, StoreException refused) {
        assertTrue(String.valueOf(refused.getMessage()).contains(words), refused.getMessage());
    }
}
