package org.headfall.scenarios.sweep.work;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.run.RunWithoutFiles;
import org.headfall.scenarios.run.ScenarioRun;
import org.headfall.scenarios.sweep.SweepFolder;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.results.ScenarioOfRun;
import org.headfall.scenarios.sweep.store.Counts;
import org.headfall.scenarios.sweep.store.StoreException;
import org.headfall.scenarios.sweep.store.StoredRun;
import org.headfall.scenarios.sweep.store.SweepStore;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import ucar.nc2.NetcdfFile;

class SweepTest {

    @TempDir
    private Path temporary;

    private SweepFolder folder;

    @BeforeEach
    void makeFolder() {
        folder = new SweepFolder(temporary);
    }

    private List<StoredRun> rows(Path store) throws IOException {
        List<StoredRun> rows = new ArrayList<>();
        try (SweepStore open = SweepStore.read(store)) {
            open.forEach(rows::add);
        }
        return rows;
    }

    private static SweepSettings part(int number, int of) {
        return new SweepSettings(1, new Part(number, of), false, false, OptionalDouble.empty(), OptionalLong.empty());
    }

    private static SweepSettings accepting() {
        return new SweepSettings(1, Part.WHOLE, false, true, OptionalDouble.empty(), OptionalLong.empty());
    }

    /** The one run that a reader can make by hand: the document of the store's row, run with all its files. */
    @Test
    void recordsWhatTheRunAloneGives() throws InputException, IOException {
        // Otherwise a run with files may be superposed, which maps cost less by, and differ within the tolerance of
        // heads.
        Files.writeString(
                folder.base(),
                Files.readString(folder.base())
                        .replace("report_after: [1 yr, 2 yr]", "report_after: [1 yr, 2 yr], solve: by steps"));
        folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(2));
        SweepDocument sweep = folder.read(SweepFolder.SIX_RUNS);
        Path scenario = ScenarioOfRun.write(sweep, 5, temporary.resolve("again"));
        FinishedRun alone = new ScenarioRun(
                        RunPlanner.plan(
                                ScenarioReader.read(scenario, FileReach.FOLDER_OF_DOCUMENT), SweepFolder.PROGRAM, 1),
                        List.of(),
                        (stage, fraction) -> {})
                .into(temporary.resolve("alone"), false);
        double[] figures = sweep.figures().stream()
                .mapToDouble(figure -> figure.valueIn(alone))
                .toArray();
        StoredRun row = rows(folder.store()).get(4);
        assertEquals("{\"rate\":\"20 L/s\",\"transmissivity\":\"200 m2/d\"}", row.inputs());
        assertArrayEquals(figures, row.figures());
        assertTrue(figures[0] > 0.1, "loss " + figures[0]);
        assertTrue(figures[2] < 2, "margin " + figures[2]);
    }

    @Test
    void givesTheSameNumbersOnAnyNumberOfThreadsAndInParts() throws InputException, IOException {
        folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(1));
        List<StoredRun> one = rows(folder.store());
        Files.delete(folder.store());
        for (int number = 1; number <= 4; number++) {
            folder.run(SweepFolder.SIX_RUNS, part(number, 4));
        }
        Counts merged = MergedParts.merge(
                folder.read(SweepFolder.SIX_RUNS),
                temporary.resolve("sweep.yaml"),
                folder.results(),
                SweepFolder.PROGRAM);
        assertEquals(new Counts(0, 6, 0), merged);
        List<StoredRun> parts = rows(folder.store());
        Files.delete(folder.store());
        folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(3));
        List<StoredRun> three = rows(folder.store());
        for (int i = 0; i < 6; i++) {
            assertArrayEquals(one.get(i).figures(), three.get(i).figures());
            assertArrayEquals(one.get(i).figures(), parts.get(i).figures());
            assertEquals(one.get(i).hash(), parts.get(i).hash());
        }
    }

    @Test
    void refusesToMergeNoPartsAndLeavesNothing() throws InputException, IOException {
        SweepDocument sweep = folder.read(SweepFolder.SIX_RUNS);
        Path document = temporary.resolve("sweep.yaml");
        StoreException refused = assertThrows(
                StoreException.class, () -> MergedParts.merge(sweep, document, folder.results(), SweepFolder.PROGRAM));
        assertTrue(String.valueOf(refused.getMessage()).contains("holds no store of a part"));
        assertFalse(Files.exists(folder.store()));
    }

    /** The same rates simulated one by one; 5 mm is what answers from unit responses promise. */
    @Test
    void answersRunsThatDifferInRatesAloneAsSimulationsDo() throws InputException, IOException {
        String rates = SweepFolder.SIX_RUNS
                .replace("values: [10 L/s, 20 L/s]", "range: {from: 5 L/s, to: 25 L/s, step: 5 L/s}")
                .replace("values: [100 m2/d, 200 m2/d, 400 m2/d]", "values: [100 m2/d, 300 m2/d]");
        folder.run(rates, SweepFolder.settings(2));
        assertTrue(rows(folder.store()).stream().allMatch(row -> row.way().equals("simulated")));
        List<StoredRun> simulated = rows(folder.store());
        Files.delete(folder.store());
        String answered = rates.replace("  - {figure: balance error}\n", "");
        folder.run(answered, SweepFolder.settings(2));
        List<StoredRun> superposed = rows(folder.store());
        for (int i = 0; i < 10; i++) {
            StoredRun run = superposed.get(i);
            assertEquals("unit responses", run.way());
            assertEquals(simulated.get(i).inputs(), run.inputs());
            // loss; then the margin of the limit, which the balance error stands before in the other sweep
            assertEquals(simulated.get(i).figures()[0], run.figures()[0], 0.005);
            assertEquals(simulated.get(i).figures()[2], run.figures()[1], 0.005);
        }
    }

    /** Without a spring and a bore that flows nothing follows head; a few runs then give all, to 1 mm of simulations. */
    @Test
    void answersRunsOfGivenRatesAsSimulationsDo() throws InputException, IOException {
        String example = Files.readString(folder.base());
        Files.writeString(
                folder.base(),
                example.replaceFirst(
                                "springs:\\n.*\\n", "protected:\n  - {name: Coolabah Spring, at: [409 km, 6322 km]}\n")
                        .replace("    lowest_level: 45 m\n", "")
                        .replace("    pump_intake_level: 40 m\n", "")
                        .replace("operation: free flow", "rate: 3 L/s\n    season: {from: 1 October, to: 31 March}"));
        String rates = """
                title: Given rates
                base: scenario.yaml
                vary:
                  - {name: town, key: bores.Town 1.rate, values: [5 L/s, 15 L/s, 25 L/s]}
                  - {name: stock, key: bores.Stock bore.rate, values: [0 L/s, 4 L/s]}
                design: full factorial
                keep:
                  - {figure: loss, at: Coolabah Spring, after: 2 yr}
                  - {figure: level in bore, at: Town 1, after: 2 yr}
                  - {figure: discharge of all bores, after: 1 yr}
                  - {figure: balance error}
                """;
        folder.run(rates, SweepFolder.settings(2));
        List<StoredRun> simulated = rows(folder.store());
        Files.delete(folder.store());
        folder.run(rates.replace("  - {figure: balance error}\n", ""), SweepFolder.settings(2));
        List<StoredRun> combined = rows(folder.store());
        for (int i = 0; i < 6; i++) {
            double[] expected = simulated.get(i).figures();
            double[] found = combined.get(i).figures();
            assertEquals("simulated", simulated.get(i).way());
            assertEquals("unit responses, linear in the rates", combined.get(i).way());
            assertEquals(expected[0], found[0], 0.001);
            assertEquals(expected[1], found[1], 0.001);
            assertEquals(expected[2], found[2], 1e-6 * expected[2]);
            // margin of the limit, which compares with a run without the town bore, and the day of its first crossing
            assertEquals(expected[4], found[3], 0.001);
            assertEquals(expected[5], found[4], 0.01);
        }
        assertTrue(Math.abs(combined.get(0).figures()[0] - combined.get(5).figures()[0]) > 0.1);
    }

    private static final String OWN_AQUIFERS = """
            title: Fields nobody has seen
            base: scenario.yaml
            vary:
              - name: T
                key: aquifer.transmissivity
                random_field: {median: 250 m2/d, deviation_of_log: 0.7, variogram: exponential, range: 12 km}
              - {name: S, key: aquifer.storativity, lognormal: {median: 2.0e-4, deviation_of_log: 0.5}}
            design: latin hypercube
            samples: 4
            keep:
              - {figure: loss, at: Coolabah Spring, after: 2 yr}
              - {figure: level in bore, at: Town 1, after: 2 yr}
              - {figure: discharge of all bores, after: 1 yr}
            """;

    /** Three town bores in proportion and two stock bores; where the town's lowest level binds, the run is not of given rates. */
    @ParameterizedTest
    @ValueSource(strings = {"given rates", "with a spring", "a lowest level that binds"})
    void answersRunsWithAquifersOfTheirOwnFromFewSources(String field) throws InputException, IOException {
        String example = Files.readString(folder.base());
        String town = "    screen_radius: 100 mm\n    outlet_level: 101 m\n    rate: ";
        String more = "  - name: Town 2\n    at: [412 km, 6311 km]\n    group: proposed\n" + town + "6 L/s\n"
                + "  - name: Town 3\n    at: [426 km, 6328 km]\n    group: proposed\n" + town + "9 L/s\n"
                + "  - name: Stock 2\n    at: [431 km, 6309 km]\n    group: existing\n" + town
                + "2 L/s\n    season: {from: 1 October, to: 31 March}\nlimits:";
        String base = example.replace("limits:", more)
                .replace("operation: free flow", "rate: 3 L/s\n    season: {from: 1 October, to: 31 March}");
        if (field.equals("given rates")) {
            base = base.replaceFirst(
                    "springs:\\n.*\\n", "protected:\n  - {name: Coolabah Spring, at: [409 km, 6322 km]}\n");
        }
        if (field.equals("a lowest level that binds")) {
            base = base.replace("lowest_level: 45 m", "lowest_level: 97 m").replace("level: 40 m", "level: 90 m");
        }
        Files.writeString(folder.base(), base);
        folder.run(OWN_AQUIFERS, SweepFolder.settings(2));
        List<StoredRun> few = rows(folder.store());
        Files.delete(folder.store());
        folder.run(OWN_AQUIFERS + "  - {figure: balance error}\n", SweepFolder.settings(2));
        List<StoredRun> simulated = rows(folder.store());
        boolean binding = field.equals("a lowest level that binds");
        for (int i = 0; i < few.size(); i++) {
            double[] expected = simulated.get(i).figures();
            double[] found = few.get(i).figures();
            assertEquals("simulated", simulated.get(i).way());
            assertTrue(
                    binding || few.get(i).way().equals("few sources"),
                    few.get(i).way());
            double tolerance = field.equals("given rates") ? 0.001 : 0.005;
            assertEquals(expected[0], found[0], tolerance);
            assertEquals(expected[1], found[1], tolerance);
            assertEquals(expected[2], found[2], 0.005 * expected[2]);
            // The margin of the limit, which compares with a run without the town's bores.
            assertEquals(expected[4], found[3], tolerance);
        }
        // Of these four fields the lowest level binds in two.
        long general = few.stream()
                .filter(row -> row.way().equals("unit responses of its own"))
                .count();
        assertEquals(binding ? 2 : 0, general);
    }

    /** Heads of each run in a file that any NetCDF library reads, and the same figures as without. */
    @Test
    void keepsHeadsOfEachRunOnRequest() throws InputException, IOException {
        folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(1));
        List<StoredRun> without = rows(folder.store());
        Files.delete(folder.store());
        folder.run(SweepFolder.SIX_RUNS + "keep_heads: yes\n", SweepFolder.settings(2));
        List<StoredRun> kept = rows(folder.store());
        for (int i = 0; i < 6; i++) {
            assertArrayEquals(without.get(i).figures(), kept.get(i).figures());
            Path file = folder.results().resolve("heads").resolve("run-" + (i + 1) + ".nc");
            try (NetcdfFile heads = NetcdfFile.open(file.toString())) {
                int[] shape = Objects.requireNonNull(heads.findVariable("hydraulic_head"))
                        .getShape();
                assertArrayEquals(new int[] {10, 10}, new int[] {shape[1], shape[2]});
            }
        }
        try (Stream<Path> files = Files.list(folder.results().resolve("heads"))) {
            assertEquals(6, files.count());
        }
    }

    @Test
    void makesNothingTwice() throws InputException, IOException {
        folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(1));
        List<StoredRun> first = rows(folder.store());
        assertEquals(new Counts(0, 6, 0), folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(1)));
        List<StoredRun> second = rows(folder.store());
        for (int i = 0; i < 6; i++) {
            assertEquals(first.get(i).seconds(), second.get(i).seconds());
        }
    }

    /** A transmissivity of zero makes an invalid scenario; the others go on. */
    @Test
    void recordsAFailedRunWithItsReasonAndGoesOn() throws InputException, IOException {
        String sweep = SweepFolder.SIX_RUNS.replace("100 m2/d", "0 m2/d");
        assertEquals(new Counts(0, 4, 2), folder.run(sweep, SweepFolder.settings(2)));
        StoredRun failed = rows(folder.store()).get(0);
        assertEquals(StoredRun.Status.FAILED, failed.status());
        assertTrue(failed.reason().startsWith("not a valid scenario: "), failed.reason());
        assertTrue(failed.reason().contains("aquifer.transmissivity is out of range"), failed.reason());
        SweepSettings again =
                new SweepSettings(1, Part.WHOLE, true, false, OptionalDouble.empty(), OptionalLong.empty());
        assertEquals(new Counts(0, 4, 2), folder.run(sweep, again));
    }

    @Test
    void refusesAChangedBaseUntilTold() throws InputException, IOException {
        folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(1));
        List<StoredRun> before = rows(folder.store());
        Files.writeString(folder.base(), "# only a remark\n" + Files.readString(folder.base()));
        assertEquals(new Counts(0, 6, 0), folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(1)));
        Files.writeString(
                folder.base(), Files.readString(folder.base()).replace("storativity: 2.0e-4", "storativity: 1.0e-4"));
        StoreException refused =
                assertThrows(StoreException.class, () -> folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(1)));
        assertTrue(
                String.valueOf(refused.getMessage())
                        .contains("is of another sweep; changed since: the base scenario, one of its files"),
                refused.getMessage());
        assertEquals(new Counts(0, 6, 0), folder.run(SweepFolder.SIX_RUNS, accepting()));
        List<StoredRun> after = rows(folder.store());
        assertTrue(before.get(0).figures()[0] != after.get(0).figures()[0]);
        try (Stream<Path> files = Files.list(folder.results())) {
            List<Path> old = files.filter(file -> file.getFileName().toString().contains("-before-"))
                    .filter(file -> file.toString().endsWith(".sqlite"))
                    .toList();
            assertEquals(1, old.size());
            assertArrayEquals(before.get(0).figures(), rows(old.get(0)).get(0).figures());
        }
    }

    /** One transmissivity more: the runs that are the same are not made again, whatever their numbers. */
    @Test
    void keepsRunsThatStayTheSameWhenTheSweepGrows() throws InputException, IOException {
        folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(1));
        List<StoredRun> before = rows(folder.store());
        folder.run(SweepFolder.SIX_RUNS.replace("100 m2/d,", "50 m2/d, 100 m2/d,"), accepting());
        List<StoredRun> after = rows(folder.store());
        assertEquals(8, after.size());
        assertEquals(before.get(0).seconds(), after.get(1).seconds());
        assertEquals(before.get(5).seconds(), after.get(7).seconds());
        assertEquals(StoredRun.Status.FINISHED, after.get(0).status());
    }

    @Test
    void stopsInTimeAndGoesOnLater() throws InputException, IOException {
        SweepSettings hurried =
                new SweepSettings(1, Part.WHOLE, false, false, OptionalDouble.of(1e-9), OptionalLong.empty());
        Counts stopped = folder.run(SweepFolder.SIX_RUNS, hurried);
        assertEquals(new Counts(6, 0, 0), stopped);
        assertEquals(new Counts(0, 6, 0), folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(1)));
    }

    @Test
    void refusesAStoreWhoseRowsWereChangedByHand() throws InputException, IOException, SQLException {
        folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(1));
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + folder.store());
                Statement statement = other.createStatement()) {
            statement.execute("DELETE FROM runs WHERE number = 2");
            statement.execute("UPDATE runs SET inputs = '{}' WHERE number = 3");
            statement.execute("INSERT INTO runs (number, status, inputs, hash) VALUES (77, 'planned', '{}', 'none')");
        }
        StoreException refused =
                assertThrows(StoreException.class, () -> folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(1)));
        String message = String.valueOf(refused.getMessage());
        assertTrue(message.contains("row 2 is missing"), message);
        assertTrue(message.contains("inputs or hash of row 3 are not those of the run"), message);
        assertTrue(message.contains("row 77 is no run of this sweep"), message);
    }

    @Test
    void refusesASecondSweepOnTheSameStore() throws InputException, IOException {
        folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(1));
        try (SweepStore held = SweepStore.open(folder.store())) {
            StoreException refused =
                    assertThrows(StoreException.class, () -> folder.run(SweepFolder.SIX_RUNS, SweepFolder.settings(1)));
            assertTrue(
                    String.valueOf(refused.getMessage()).contains("another sweep is writing to it"),
                    refused.getMessage());
            assertEquals(6, held.counts().finished());
        }
    }

    private static final String FIELDS = """
            title: Random fields
            base: scenario.yaml
            vary:
              - {name: rate, key: bores.Town 1.rate, values: [10 L/s, 20 L/s]}
              - name: picture
                key: aquifer.transmissivity
                random_field: {median: 250 m2/d, deviation_of_log: 0.7, variogram: exponential, range: 12 km}
            design: latin hypercube
            samples: 3
            seed: 11
            for_each_of: [rate]
            keep:
              - {figure: loss, at: Coolabah Spring, after: 2 yr}
              - {figure: balance error}
            """;

    /** The field that a run had, given back as a raster, gives the run's figures again. */
    @Test
    void givesARunWithARandomFieldBackAsARaster() throws InputException, IOException {
        folder.run(FIELDS, SweepFolder.settings(2));
        List<StoredRun> rows = rows(folder.store());
        assertTrue(rows.stream().allMatch(row -> row.status() == StoredRun.Status.FINISHED));
        assertTrue(rows.get(0).figures()[0] != rows.get(1).figures()[0]);
        // The same fields for both rates.
        String picture = rows.get(4).inputs().replaceFirst(".*picture", "");
        assertTrue(rows.get(1).inputs().endsWith(picture), rows.get(1).inputs());
        Path scenario = ScenarioOfRun.write(folder.read(FIELDS), 5, temporary.resolve("again"));
        String text = Files.readString(scenario);
        assertTrue(text.contains("raster: aquifer-transmissivity.nc"), text);
        assertTrue(text.contains("# aquifer-transmissivity.nc is drawn from {random: {median: 250 m2/d"), text);
        FinishedRun alone = RunWithoutFiles.of(
                RunPlanner.plan(ScenarioReader.read(scenario, FileReach.FOLDER_OF_DOCUMENT), SweepFolder.PROGRAM, 1),
                false);
        double loss = folder.read(FIELDS).figures().get(0).valueIn(alone);
        assertEquals(rows.get(4).figures()[0], loss, 1e-9);
    }

    @Test
    void listsANumberOfFieldsForAFullFactorial() throws InputException, IOException {
        String factorial = FIELDS.replace("range: 12 km}", "range: 12 km, fields: 2}")
                .replace("design: latin hypercube\nsamples: 3\n", "design: full factorial\n")
                .replace("for_each_of: [rate]\n", "");
        assertEquals(new Counts(0, 4, 0), folder.run(factorial, SweepFolder.settings(2)));
        List<StoredRun> rows = rows(folder.store());
        assertEquals(
                "{\"rate\":\"10 L/s\",\"picture\":\"field 2\"}", rows.get(1).inputs());
        // Another spread is another sweep, although the fields have the same numbers.
        assertThrows(
                StoreException.class,
                () -> folder.run(
                        factorial.replace("deviation_of_log: 0.7", "deviation_of_log: 0.8"), SweepFolder.settings(1)));
    }

    /** The same sweep by simulations; 5 mm is what answers from unit responses promise. */
    private void requireSimulated(List<StoredRun> rows, String sweep) throws InputException, IOException {
        Files.delete(folder.store());
        folder.run(sweep.replace("keep:\n", "keep:\n  - {figure: balance error}\n"), SweepFolder.settings(2));
        List<StoredRun> simulated = rows(folder.store());
        for (int i = 0; i < rows.size(); i++) {
            assertEquals("simulated", simulated.get(i).way());
            assertEquals(simulated.get(i).figures()[1], rows.get(i).figures()[0], 0.005);
            assertEquals(simulated.get(i).figures()[2], rows.get(i).figures()[1], 0.005);
        }
    }

    private static final String LAYOUTS = """
            title: Layouts
            base: scenario.yaml
            vary:
              - {name: bores, key: layouts.Field.bores, values: [2, 3]}
              - {name: spacing, key: layouts.Field.spacing, range: {from: 2 km, to: 6 km, step: 2 km}}
              - {name: pattern, key: layouts.Field.pattern, values: [line, ring]}
            design: full factorial
            keep:
              - {figure: loss, of: proposed bores, after: 2 yr}
              - {figure: drawdown by neighbours, of: proposed bores, after: 2 yr}
              - {figure: discharge of proposed bores, after: 2 yr}
              - {figure: level in bore, at: Field 3, after: 2 yr}
            """;

    /** Bores share one rate: the same water whatever the layout, and less drawdown by neighbours the farther apart. */
    @Test
    void variesALayoutOfBores() throws InputException, IOException {
        String base = Files.readString(folder.base());
        int begin = base.indexOf("  - name: Town 1");
        int end = base.indexOf("  - name: Stock bore");
        Files.writeString(
                folder.base(), base.substring(0, begin) + base.substring(end).replace("limits:", """
                        layouts:
                          - name: Field
                            pattern: line
                            bores: 3
                            spacing: 2 km
                            centre: [418 km, 6320 km]
                            rate: 20 L/s
                            each: {group: proposed, screen_radius: 100 mm, outlet_level: 101 m}
                        limits:"""));
        assertEquals(new Counts(0, 12, 0), folder.run(LAYOUTS, SweepFolder.settings(2)));
        List<StoredRun> rows = rows(folder.store());
        assertTrue(rows.stream().allMatch(row -> row.way().equals("unit responses of its own")));
        requireSimulated(rows, LAYOUTS);
        for (StoredRun row : rows) {
            assertEquals(20 * 86.4, row.figures()[2], 1e-6);
            assertEquals(row.inputs().contains("\"bores\":\"2\""), Double.isNaN(row.figures()[3]));
        }
        // Runs are in the order bores, spacing, pattern: two and four places on are the next spacings.
        for (int first : new int[] {0, 1, 6, 7}) {
            assertTrue(rows.get(first).figures()[1] > rows.get(first + 2).figures()[1]);
            assertTrue(rows.get(first + 2).figures()[1] > rows.get(first + 4).figures()[1]);
            assertTrue(rows.get(first).figures()[0] > rows.get(first + 4).figures()[0]);
        }
    }
}
