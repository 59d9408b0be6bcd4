package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import ucar.ma2.Array;
import ucar.nc2.NetcdfFile;

/**
 * A run that is stopped, killed or runs out of disk leaves what it has recorded readable, nothing half written under its
 * final name, and earlier results as they were. For systems with POSIX signals.
 */
@Timeout(300)
class StoppedRunTest {
    private static final String STOPPED = "headfall: stopped before the end.";

    @TempDir
    private Path folder;

    private Path results;
    private Path part;
    private Path growing;
    private Path messages;

    /** Some seconds of work: 10,000 cells, 30 years, heads of all cells each month. */
    @BeforeEach
    void makeScenario() throws IOException, URISyntaxException {
        assumeTrue(Files.isExecutable(Path.of("/bin/kill")), "signals are sent with kill");
        String text = Files.readString(Path.of(StoppedRunTest.class
                .getResource("/scenario/two-bores/scenario.yaml")
                .toURI()));
        Files.writeString(
                folder.resolve("scenario.yaml"),
                text.replace("cell: 1 km", "cell: 200 m")
                        .replace("for: 5 yr", "for: 30 yr")
                        .replace("grids: yearly", "grids: monthly")
                        .replace("head_tolerance: 1 cm", "head_tolerance: 0.01 mm"));
        results = folder.resolve("results").resolve("scenario");
        part = results.resolveSibling("scenario.part");
        growing = part.resolve("heads.nc.part");
        messages = folder.resolve("messages.txt");
    }

    private HeadfallProcess start(String... more) throws IOException {
        List<String> command = HeadfallProcess.command("run", folder.toString(), "--threads", "1");
        command.addAll(List.of(more));
        return HeadfallProcess.start(messages, command);
    }

    /** Whether this process ignores the signal INT, number 2; processes that it starts inherit that. */
    private static boolean ignoresInterrupt() throws IOException {
        Path status = Path.of("/proc/self/status");
        return Files.isReadable(status)
                && Files.readAllLines(status).stream()
                        .filter(line -> line.startsWith("SigIgn:"))
                        .anyMatch(line ->
                                (Long.parseUnsignedLong(line.substring(7).strip(), 16) >> 1 & 1) == 1);
    }

    private static long size(Path file) {
        try {
            return Files.size(file);
        } catch (IOException notThere) {
            return 0;
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {0, 1, 2_000_000, 8_000_000})
    void leavesWholeRecordsWhenKilled(long bytes) throws IOException, InterruptedException {
        try (HeadfallProcess run = start()) {
            run.waitUntil(() -> bytes == 0 ? Files.exists(part) : size(growing) >= bytes);
            assertTrue(run.isRunning(), run::said);
            run.send("KILL");
            assertEquals(128 + 9, run.end());
        }
        assertFalse(Files.exists(results));
        int records = Files.exists(growing) ? wholeRecords(growing) : 0;
        assertTrue(records >= (bytes >= 2_000_000 ? 10 : 0), () -> "only " + records + " records");
        Path bores = part.resolve("bores.nc.part");
        if (Files.exists(bores)) {
            wholeRecords(bores);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"comparing runs", "writing tables"})
    void leavesNothingUnderItsFinalNameWhenKilledLate(String stage) throws IOException, InterruptedException {
        try (HeadfallProcess run = start()) {
            run.waitUntil(() -> run.said().contains(stage));
            run.send("KILL");
            assumeTrue(run.end() == 128 + 9, "the run was faster");
        }
        assertFalse(Files.exists(results));
        assertEquals(361, wholeRecords(part.resolve("heads.nc")));
    }

    /** How many records a file has; each holds a head of between 50 m and 150 m in every cell, or at every station. */
    private static int wholeRecords(Path path) throws IOException {
        try (NetcdfFile file = NetcdfFile.open(path.toString())) {
            Array time = file.findVariable("time").read();
            Array head = file.findVariable("hydraulic_head").read();
            int records = (int) time.getSize();
            assertEquals(records, head.getShape()[0]);
            for (int i = 0; i < head.getSize(); i++) {
                float value = head.getFloat(i);
                assertTrue(value > 50 && value < 150, "head " + value);
            }
            for (int i = 1; i < records; i++) {
                assertTrue(time.getDouble(i) > time.getDouble(i - 1), "times do not ascend");
            }
            return records;
        }
    }

    @ParameterizedTest
    @CsvSource({"INT,130", "TERM,143"})
    void saysWhereTheRecordsAreWhenStopped(String signal, int code) throws IOException, InterruptedException {
        assumeTrue(!signal.equals("INT") || !ignoresInterrupt(), "started so that Ctrl-C is ignored, as by nohup");
        try (HeadfallProcess run = start()) {
            run.waitUntil(() -> size(growing) >= 2_000_000);
            run.send(signal);
            assertEquals(code, run.end(), run::said);
            assertTrue(run.said().contains(STOPPED + " What was recorded so far is in " + part), run::said);
            assertFalse(run.said().contains("\tat "), run::said);
        }
        assertFalse(Files.exists(results));
        assertTrue(wholeRecords(growing) >= 10);
    }

    @Test
    void keepsEarlierResultsWhenTheNextRunIsKilledAndClearsUpAfterIt() throws IOException, InterruptedException {
        Files.createDirectories(results);
        Path earlier = Files.writeString(results.resolve("report.html"), "earlier results");
        try (HeadfallProcess run = start("--overwrite")) {
            run.waitUntil(() -> size(growing) >= 2_000_000);
            run.send("KILL");
            run.end();
        }
        assertEquals("earlier results", Files.readString(earlier));
        assertTrue(Files.exists(growing));
        String quick = Files.readString(folder.resolve("scenario.yaml")).replace("cell: 200 m", "cell: 2 km");
        Files.writeString(folder.resolve("scenario.yaml"), quick);
        headfall("run", folder.toString(), "--overwrite", "--quiet").exits(0);
        assertFalse(Files.exists(part));
        assertTrue(Files.size(results.resolve("heads.nc")) > 0);
    }

    @Test
    void refusesASecondRunIntoTheSameFolder() throws IOException, InterruptedException {
        try (HeadfallProcess first = start()) {
            first.waitUntil(() -> size(growing) > 0);
            String said = headfall("run", folder.toString(), "--quiet").exits(1).err();
            assertTrue(said.contains("another run is writing these results; wait for it or choose"), said);
            assertTrue(first.isRunning(), first::said);
            assertEquals(0, first.end(), first::said);
        }
        assertEquals(361, wholeRecords(results.resolve("heads.nc")));
    }

    @Test
    void saysThatTheDiskIsFullAndKeepsEarlierResults() throws IOException, InterruptedException {
        Path disk = Files.createDirectory(folder.resolve("disk"));
        Path saved = Files.createDirectory(folder.resolve("saved"));
        Path script = Files.writeString(folder.resolve("full-disk.sh"), """
                set -eu
                mount -t tmpfs -o size=70m tmpfs "$DISK"
                mkdir "$DISK/out"
                echo earlier > "$DISK/out/report.html"
                "$@" &
                run=$!
                while [ ! -e "$DISK/out.part/heads.nc.part" ] && kill -0 $run; do sleep 0.02; done
                head -c 100m /dev/zero > "$DISK/filler" || true
                code=0
                wait $run || code=$?
                rm "$DISK/filler"
                cp -r "$DISK"/. "$SAVED"
                exit $code
                """);
        String output = runInNamespace(
                1,
                script,
                disk,
                saved,
                "run",
                folder.toString(),
                "--output",
                disk.resolve("out").toString(),
                "--overwrite");
        assertTrue(
                output.contains("headfall: " + disk.resolve("out")
                        + ": the disk is full; free some space or choose another output folder"),
                output);
        assertFalse(output.contains("\tat "), output);
        assertEquals("earlier\n", Files.readString(saved.resolve("out").resolve("report.html")));
        assertArrayEquals(
                new String[] {"report.html"}, saved.resolve("out").toFile().list());
    }

    @Test
    void refusesADiskThatIsTooSmallBeforeTheWork() throws IOException, InterruptedException {
        Path disk = Files.createDirectory(folder.resolve("disk"));
        String output = runOntoDisk(disk, "size=1m");
        assertTrue(output.contains("results need about "), output);
        assertTrue(output.contains("free some space, choose another output folder, or record fewer grids"), output);
        assertFalse(output.contains("simulating"), output);
    }

    @Test
    void refusesADiskThatCannotBeWrittenTo() throws IOException, InterruptedException {
        Path disk = Files.createDirectory(folder.resolve("disk"));
        String output = runOntoDisk(disk, "ro");
        assertTrue(output.contains(disk.resolve("out") + ": cannot be written: Read-only file system"), output);
        assertTrue(output.contains("choose a folder that you may write to"), output);
        assertFalse(output.contains("simulating"), output);
    }

    /** Runs with results on a disk that is mounted in a way that must make the run fail. */
    private String runOntoDisk(Path disk, String mountOption) throws IOException, InterruptedException {
        Path script = Files.writeString(
                folder.resolve("mount.sh"),
                "set -eu\nmount -t tmpfs -o " + mountOption + " tmpfs \"$DISK\"\nexec \"$@\"\n");
        return runInNamespace(
                1,
                script,
                disk,
                disk,
                "run",
                folder.toString(),
                "--output",
                disk.resolve("out").toString());
    }

    /** Runs a script that may mount file systems of its own; answers what was said. */
    private String runInNamespace(int code, Path script, Path disk, Path saved, String... arguments)
            throws IOException, InterruptedException {
        Process probe = new ProcessBuilder(
                        "sh", "-c", "unshare -rm mount -t tmpfs -o size=1m tmpfs '" + disk + "' 2>/dev/null")
                .start();
        boolean possible = probe.waitFor(20, TimeUnit.SECONDS) && probe.exitValue() == 0;
        assumeTrue(possible, "this system lets nobody mount a small disk");
        List<String> command = HeadfallProcess.command(arguments);
        command.addAll(0, List.of("env", "DISK=" + disk, "SAVED=" + saved, "unshare", "-rm", "sh", script.toString()));
        try (HeadfallProcess run = HeadfallProcess.start(messages, command)) {
            assertEquals(code, run.end(), run::said);
            return run.said();
        }
    }
}
