package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.sweep.store.Counts;
import org.headfall.scenarios.sweep.store.StoredRun;
import org.headfall.scenarios.sweep.store.SweepStore;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A sweep that is killed loses nothing that was recorded and records nothing twice. For systems with POSIX signals. {@code
 * validation/kill-sweep} does the same two hundred times.
 */
@Timeout(600)
class SweepStoppedTest {

    @TempDir
    private Path folder;

    private Path store;
    private Path messages;

    @BeforeEach
    void makeSweep() throws IOException {
        assumeTrue(Files.isExecutable(Path.of("/bin/kill")), "signals are sent with kill");
        SweepExample.writeSmall(folder);
        Files.writeString(folder.resolve("sweep.yaml"), """
                title: Runs to be killed
                base: scenario.yaml
                vary:
                  - {name: T, key: aquifer.transmissivity, uniform: {from: 100 m2/d, to: 400 m2/d}}
                design: latin hypercube
                samples: 40
                keep:
                  - {figure: loss, at: Coolabah Spring, after: 1 yr}
                """);
        store = folder.resolve("results").resolve("sweep").resolve("sweep.sqlite");
        messages = folder.resolve("messages.txt");
    }

    private void samples(int number) throws IOException {
        Path sweep = folder.resolve("sweep.yaml");
        Files.writeString(sweep, Files.readString(sweep).replace("samples: 40", "samples: " + number));
    }

    private HeadfallProcess start(String... more) throws IOException {
        List<String> command = HeadfallProcess.command("sweep", folder.toString(), "--threads", "2", "--quiet");
        command.addAll(List.of(more));
        return HeadfallProcess.start(messages, command);
    }

    private int recorded() {
        try (SweepStore open = SweepStore.read(store)) {
            Counts counts = open.counts();
            return counts.finished() + counts.failed();
        } catch (IOException notThereYet) {
            return 0;
        }
    }

    private List<StoredRun> done() throws IOException {
        List<StoredRun> rows = new ArrayList<>();
        try (SweepStore open = SweepStore.read(store)) {
            open.forEach(row -> {
                if (row.status() != StoredRun.Status.PLANNED) {
                    rows.add(row);
                }
            });
        }
        return rows;
    }

    @Test
    void losesNothingAndRepeatsNothingWhenKilled() throws IOException, InterruptedException {
        // More than are made between looking and killing.
        samples(400);
        List<StoredRun> before = List.of();
        for (int most : new int[] {1, 8, 20}) {
            try (HeadfallProcess sweep = start()) {
                sweep.waitUntil(() -> recorded() >= most);
                assertTrue(sweep.isRunning(), sweep::said);
                sweep.send("KILL");
                assertEquals(128 + 9, sweep.end());
            }
            List<StoredRun> after = done();
            assertTrue(after.size() >= most && after.size() < 400, () -> after.size() + " runs");
            requireKept(before, after);
            before = after;
        }
        try (HeadfallProcess sweep = start()) {
            assertEquals(0, sweep.end(), sweep::said);
        }
        requireKept(before, done());
        assertEquals(400, done().size());
        assertEquals(401, Files.readAllLines(store.resolveSibling("sweep.csv")).size());
    }

    /** Ctrl-C sends INT. */
    @ParameterizedTest
    @CsvSource({"INT, 130", "TERM, 143"})
    void saysWhatIsKeptAndHowToGoOn(String signal, int code) throws IOException, InterruptedException {
        samples(400);
        try (HeadfallProcess sweep = start("--accept-changes")) {
            sweep.waitUntil(() -> recorded() >= 1);
            sweep.send(signal);
            assertEquals(code, sweep.end(), sweep::said);
            Pattern notice = Pattern.compile("headfall: stopped\\. (\\d+) of 400 runs are recorded in " + store
                    + "; the same command goes on with the rest: headfall sweep " + folder + " --threads 2 --quiet");
            List<String> lines = sweep.said().strip().lines().toList();
            assertEquals(1, lines.size(), sweep::said);
            Matcher told = notice.matcher(lines.get(0));
            assertTrue(told.matches(), sweep::said);
            int kept = Integer.parseInt(told.group(1));
            assertTrue(kept >= 1 && kept <= recorded() && kept < 400, sweep::said);
        }
    }

    /** As an array of jobs on a batch system: the killed part is started again, the others go on meanwhile. */
    @Test
    void makesAWholeOfFourPartsOfWhichOneWasKilled() throws IOException, InterruptedException {
        samples(200);
        List<HeadfallProcess> parts = new ArrayList<>();
        try {
            for (int part = 1; part <= 4; part++) {
                messages = folder.resolve("messages-" + part + ".txt");
                parts.add(start("--part", part + "/4"));
            }
            Path whole = store;
            store = whole.resolveSibling("sweep-part-2-of-4.sqlite");
            HeadfallProcess killed = parts.get(1);
            killed.waitUntil(() -> recorded() >= 1);
            killed.send("KILL");
            assertEquals(128 + 9, killed.end(), killed::said);
            messages = folder.resolve("messages-again.txt");
            parts.add(start("--part", "2/4"));
            for (HeadfallProcess part : parts) {
                if (part != killed) {
                    assertEquals(0, part.end(), part::said);
                }
            }
            store = whole;
            messages = folder.resolve("messages-merge.txt");
            List<String> merge = HeadfallProcess.command("sweep", "merge", folder.toString());
            try (HeadfallProcess merging = HeadfallProcess.start(messages, merge)) {
                assertEquals(0, merging.end(), merging::said);
            }
            assertEquals(200, done().size());
            assertTrue(done().stream().allMatch(run -> run.status() == StoredRun.Status.FINISHED));
        } finally {
            parts.forEach(HeadfallProcess::close);
        }
    }

    /** A recorded run is the same row as ever: a run made again would have another time. */
    private static void requireKept(List<StoredRun> before, List<StoredRun> after) {
        for (StoredRun run : before) {
            StoredRun kept = after.stream()
                    .filter(row -> row.number() == run.number())
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("run " + run.number() + " is lost"));
            assertArrayEquals(run.figures(), kept.figures());
            assertEquals(run.seconds(), kept.seconds(), "run " + run.number() + " was made again");
        }
    }

    @Test
    void refusesASecondSweepWhileTheFirstGoesOn() throws IOException, InterruptedException {
        samples(400);
        try (HeadfallProcess first = start()) {
            first.waitUntil(() -> recorded() > 0);
            // However fast runs are made, it has not ended when the second looks.
            first.send("STOP");
            assertTrue(first.isRunning(), first::said);
            String refused =
                    headfall("sweep", folder.toString(), "--quiet").exits(1).err();
            assertTrue(refused.contains("another sweep is writing to it"), refused);
            String status = headfall("sweep", "status", folder.toString()).out();
            assertTrue(status.contains("400 runs: "), status);
            assertTrue(first.isRunning(), first::said);
            first.send("KILL");
            assertEquals(128 + 9, first.end());
        }
    }

    @Test
    void saysThatTheDiskIsFullAndGoesOnWhenThereIsRoom() throws IOException, InterruptedException {
        Path disk = Files.createDirectory(folder.resolve("disk"));
        Path saved = Files.createDirectory(folder.resolve("saved"));
        requireSmallDisks(disk);
        Path script = Files.writeString(folder.resolve("full-disk.sh"), """
                set -eu
                mount -t tmpfs -o size=3m tmpfs "$DISK"
                "$@" &
                sweep=$!
                while [ ! -e "$DISK/out/sweep.sqlite-wal" ] && kill -0 $sweep; do sleep 0.02; done
                head -c 10m /dev/zero > "$DISK/filler" || true
                code=0
                wait $sweep || code=$?
                rm "$DISK/filler"
                echo "first: $code"
                "$@"
                cp -r "$DISK"/out/. "$SAVED"
                """);
        List<String> command = HeadfallProcess.command(
                "sweep",
                folder.toString(),
                "--quiet",
                "--threads",
                "1",
                "--output",
                disk.resolve("out").toString());
        command.addAll(0, List.of("env", "DISK=" + disk, "SAVED=" + saved, "unshare", "-rm", "sh", script.toString()));
        try (HeadfallProcess sweep = HeadfallProcess.start(messages, command)) {
            assertEquals(0, sweep.end(), sweep::said);
            assertTrue(sweep.said().contains("the disk is full"), sweep::said);
            assertTrue(sweep.said().contains("first: 1"), sweep::said);
        }
        store = saved.resolve("sweep.sqlite");
        assertEquals(40, done().size());
    }

    private static void requireSmallDisks(Path disk) throws IOException, InterruptedException {
        Process probe = new ProcessBuilder(
                        "sh", "-c", "unshare -rm mount -t tmpfs -o size=1m tmpfs '" + disk + "' 2>/dev/null")
                .start();
        boolean possible = probe.waitFor(20, TimeUnit.SECONDS) && probe.exitValue() == 0;
        assumeTrue(possible, "this system lets nobody mount a small disk");
    }
}
