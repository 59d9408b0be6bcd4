package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorCompletionService;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.store.Counts;
import org.headfall.scenarios.sweep.store.Definition;
import org.headfall.scenarios.sweep.store.RunOutcome;
import org.headfall.scenarios.sweep.store.StoreException;
import org.headfall.scenarios.sweep.store.StoreWriter;
import org.headfall.scenarios.sweep.store.SweepStore;

/**
 * Makes the runs of a sweep that are not recorded yet. Use one object a time.
 *
 * <p>Whenever it is stopped, what was recorded stays recorded, and the same sweep goes on with the rest.
 */
public final class Sweep {

    private static final double NANOSECONDS = 1e-9;

    /** Stands for a run that was not begun because time was up. */
    private static final RunOutcome SKIPPED = new RunOutcome(0, new double[0], "", "", 0);

    /** Runs handed to the pool ahead of time, per thread. */
    private static final int AHEAD = 4;

    private final SweepDocument sweep;
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
     * @param settings how it is computed
     * @param folder where the store and the log go
     * @param program program and version
     * @param progress is told how it goes
     * @throws IOException if a file cannot be read any more
     */
    public Sweep(
            SweepDocument sweep,
            Path document,
            SweepSettings settings,
            Path folder,
            String program,
            SweepProgress progress)
            throws IOException {
        this.sweep = sweep;
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
        Files.createDirectories(folder);
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
            say(
                    log,
                    String.format(
                            Locale.ROOT,
                            "%d of %d runs recorded, %d of them failed",
                            counts.all() - counts.planned(),
                            counts.all(),
                            counts.failed()));
            return counts;
        } catch (StoreException e) {
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
        Workload workload = Workload.of(sweep.base());
        long memory = Math.min(
                settings.memory().orElse(Long.MAX_VALUE), Runtime.getRuntime().maxMemory());
        int threads = workload.threads(Math.min(settings.threads(), before.planned()), memory);
        say(log, before.planned() + " of " + before.all() + " runs to make; " + workload.words(threads));
        if (threads < Math.min(settings.threads(), before.planned())) {
            say(log, "more threads would not fit into the memory that is allowed");
        }
        SharedResponses responses = new SharedResponses(sweep, runs, program, threads);
        if (responses.shared() > 0) {
            say(
                    log,
                    responses.shared() + " of " + runs.size()
                            + " runs differ from others in rates alone and are answered"
                            + " from unit responses, where these are exact enough");
        }
        List<Integer> numbers = responses.inOrderOfWork(store.planned());
        OneRun one = new OneRun(sweep, responses, program);
        ExecutorService pool = Executors.newFixedThreadPool(threads, Sweep::daemon);
        try (StoreWriter writer = new StoreWriter(store, program)) {
            drive(numbers, one, new ExecutorCompletionService<>(pool), threads, writer, log, before);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(storeFile() + ": interrupted; give the same command again to go on", e);
        } finally {
            pool.shutdownNow();
        }
    }

    private static Thread daemon(Runnable work) {
        Thread thread = new Thread(work, "sweep");
        thread.setDaemon(true);
        return thread;
    }

    private void drive(
            List<Integer> numbers,
            OneRun one,
            ExecutorCompletionService<RunOutcome> pool,
            int threads,
            StoreWriter writer,
            SweepLog log,
            Counts before)
            throws IOException, InterruptedException {
        int next = 0;
        int under = 0;
        int doneBefore = before.all() - before.planned();
        int done = doneBefore;
        int failed = before.failed();
        while (next < numbers.size() || under > 0) {
            while (next < numbers.size() && under < AHEAD * threads && !isOutOfTime()) {
                int number = numbers.get(next);
                pool.submit(() -> isOutOfTime() ? SKIPPED : one.outcome(number, runs.get(number - 1)));
                next++;
                under++;
            }
            if (under == 0) {
                break;
            }
            RunOutcome outcome = finished(pool, writer);
            under--;
            if (!isSkipped(outcome)) {
                writer.add(outcome);
                requireMemory(outcome, writer);
                done++;
                failed += outcome.failed() ? 1 : 0;
                sayHowLong(log, outcome, done - doneBefore, before.planned(), threads);
                progress.reached(done, failed, before.all());
                log.reached(doneBefore, done, failed, before.all());
            }
        }
        outOfTime = done < before.all();
    }

    /** Whether time was up before the run began; runs count from one. */
    private static boolean isSkipped(RunOutcome outcome) {
        return outcome.number() == SKIPPED.number();
    }

    private static RunOutcome finished(ExecutorCompletionService<RunOutcome> pool, StoreWriter writer)
            throws InterruptedException, IOException {
        try {
            return pool.take().get();
        } catch (ExecutionException e) {
            writer.close();
            if (e.getCause() instanceof Error fatal) {
                throw fatal;
            }
            throw new IllegalStateException(e.getCause());
        }
    }

    private static void requireMemory(RunOutcome outcome, StoreWriter writer) throws IOException {
        if (outcome.reason().equals(OneRun.OUT_OF_MEMORY)) {
            writer.close();
            throw new OutOfMemoryError("in run " + outcome.number());
        }
    }

    /** After the first runs, how long all will take. */
    private void sayHowLong(SweepLog log, RunOutcome outcome, int made, int planned, int threads) throws IOException {
        if (made != threads || made == planned) {
            return;
        }
        double seconds = elapsed() / made * planned;
        say(
                log,
                String.format(
                        Locale.ROOT,
                        "a run takes about %.2g s, all of them about %s",
                        outcome.seconds(),
                        Durations.words(seconds)));
        if (settings.budget().isPresent() && seconds > settings.budget().getAsDouble()) {
            say(
                    log,
                    "that is more than the " + Durations.words(settings.budget().getAsDouble()) + " allowed: about "
                            + Math.round(planned * settings.budget().getAsDouble() / seconds)
                            + " runs will be made; the same command goes on with the rest");
        }
    }

    private boolean isOutOfTime() {
        return settings.budget().isPresent() && elapsed() > settings.budget().getAsDouble();
    }

    private double elapsed() {
        return (System.nanoTime() - started) * NANOSECONDS;
    }

    private void say(SweepLog log, String line) throws IOException {
        progress.say(line);
        log.say(line);
    }
}
