package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.store.Counts;
import org.headfall.scenarios.sweep.store.Definition;
import org.headfall.scenarios.sweep.store.StoreException;
import org.headfall.scenarios.sweep.store.StoreWriter;
import org.headfall.scenarios.sweep.store.SweepStore;

/**
 * Makes the runs of a sweep that are not recorded yet. Use one object a time.
 *
 * <p>Whenever it is stopped, what was recorded stays recorded, and the same sweep goes on with the rest.
 */
public final class Sweep {

    private final SweepDocument sweep;
    private final Path document;
    private final RunEngine engine;
    private final SweepSettings settings;
    private final Path folder;
    private final String program;
    private final SweepProgress progress;
    private final long started = System.nanoTime();
    private final RunList runs;
    private final Definition definition;
    private boolean outOfTime;

    /**
     * A sweep.
     *
     * @param sweep the sweep
     * @param document its file
     * @param engine makes the runs
     * @param settings how it is computed
     * @param folder where the store and the log go
     * @param program program and version
     * @param progress is told how it goes
     * @throws IOException if a file cannot be read any more
     */
    public Sweep(
            SweepDocument sweep,
            Path document,
            RunEngine engine,
            SweepSettings settings,
            Path folder,
            String program,
            SweepProgress progress)
            throws IOException {
        this.sweep = sweep;
        this.document = document;
        this.engine = engine;
        this.settings = settings;
        this.folder = folder;
        this.program = program;
        this.progress = progress;
        runs = new RunList(sweep);
        definition = new SweepPlan(sweep, document, program).definition(runs, settings.part());
    }

    /** The file of the store. */
    public Path storeFile() {
        return folder.resolve(settings.part().storeName());
    }

    /**
     * Makes the runs.
     *
     * @return how many runs are in which state
     * @throws IOException if the store cannot be written or is of another sweep; what was recorded before is kept
     */
    public Counts run() throws IOException {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw ResultsFolder.explained(e, folder);
        }
        StoreOfSweep opening = new StoreOfSweep(storeFile(), definition);
        try (SweepStore store = opening.open(settings.acceptChanges());
                SweepLog log = new SweepLog(folder.resolve("sweep.log"))) {
            if (settings.retryFailed()) {
                say(log, store.planFailedAgain() + " failed runs are made again");
            }
            Counts before = store.counts();
            if (before.planned() > 0) {
                make(store, log, before);
            }
            Counts counts = store.counts();
            outOfTime = counts.planned() > 0;
            say(
                    log,
                    String.format(
                            Locale.ROOT,
                            "%d of %d runs recorded, %d of them failed",
                            counts.all() - counts.planned(),
                            counts.all(),
                            counts.failed()));
            return counts;
        } catch (StoreException | EngineException e) {
            throw e;
        } catch (IOException e) {
            throw ResultsFolder.explained(e, folder);
        }
    }

    /** Whether the time allowed ended before all runs were made. */
    public boolean ranOutOfTime() {
        return outOfTime;
    }

    private void make(SweepStore store, SweepLog log, Counts before) throws IOException {
        say(log, before.planned() + " of " + before.all() + " runs to make");
        try (StoreWriter writer = new StoreWriter(store, program)) {
            SweepRecorder recorder = new SweepRecorder(settings, writer, log, progress, before, started);
            engine.make(new WantedRuns(sweep, document, runs, store.planned(), program, settings, folder), recorder);
            recorder.sayWays();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(storeFile() + ": interrupted; give the same command again to go on", e);
        }
    }

    private void say(SweepLog log, String line) throws IOException {
        progress.say(line);
        log.say(line);
    }
}
