package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.headfall.scenarios.sweep.store.Counts;
import org.headfall.scenarios.sweep.store.RunOutcome;
import org.headfall.scenarios.sweep.store.StoreWriter;

/** Records what comes of runs, and says how the sweep goes and how long it will take. */
final class SweepRecorder implements RunEngine.Receiver {

    private static final double NANOSECONDS = 1e-9;

    /** Runs made, by thread, before it is said how long all will take: the first may have waited for what they share. */
    private static final int TIMED_RUNS = 4;

    private final SweepSettings settings;
    private final StoreWriter writer;
    private final SweepLog log;
    private final SweepProgress progress;
    private final Counts before;
    private final long started;
    private final Map<String, Integer> ways = new TreeMap<>();
    private int made;
    private int failed;

    /**
     * A recorder.
     *
     * @param settings how the sweep is computed
     * @param writer records
     * @param log is told
     * @param progress is told as well
     * @param before runs in the store before
     * @param started when the sweep began ({@link System#nanoTime()})
     */
    SweepRecorder(
            SweepSettings settings,
            StoreWriter writer,
            SweepLog log,
            SweepProgress progress,
            Counts before,
            long started) {
        this.settings = settings;
        this.writer = writer;
        this.log = log;
        this.progress = progress;
        this.before = before;
        this.started = started;
    }

    @Override
    public void say(String line) throws IOException {
        progress.say(line);
        log.say(line);
    }

    @Override
    public boolean wantsMore() {
        OptionalDouble budget = settings.budget();
        return budget.isEmpty() || elapsed() <= budget.getAsDouble();
    }

    private double elapsed() {
        return (System.nanoTime() - started) * NANOSECONDS;
    }

    @Override
    public void receive(RunOutcome outcome) throws IOException, InterruptedException {
        writer.add(outcome);
        if (outcome.ending() == RunOutcome.Ending.OUT_OF_MEMORY) {
            writer.close();
            throw new OutOfMemoryError("in run " + outcome.number());
        }
        made++;
        if (outcome.failed()) {
            failed++;
        } else {
            ways.merge(outcome.way(), 1, Integer::sum);
        }
        sayHowLong(outcome);
        int doneBefore = before.all() - before.planned();
        progress.reached(doneBefore + made, before.failed() + failed, before.all());
        log.reached(doneBefore, doneBefore + made, before.failed() + failed, before.all());
    }

    /** After the first runs, how long all will take. */
    private void sayHowLong(RunOutcome outcome) throws IOException {
        if (made != TIMED_RUNS * settings.threads() || made == before.planned()) {
            return;
        }
        double seconds = elapsed() / made * before.planned();
        say(String.format(
                Locale.ROOT,
                "a run takes about %.2g s, all of them about %s",
                outcome.seconds(),
                Durations.words(seconds)));
        OptionalDouble budget = settings.budget();
        if (budget.isPresent() && seconds > budget.getAsDouble()) {
            say("that is more than the " + Durations.words(budget.getAsDouble()) + " allowed: about "
                    + Math.round(before.planned() * budget.getAsDouble() / seconds)
                    + " runs will be made; the same command goes on with the rest");
        }
    }

    /** Says how runs were answered, how many each way. */
    void sayWays() throws IOException {
        if (!ways.isEmpty()) {
            say(ways.entrySet().stream()
                    .map(way -> way.getKey() + " " + way.getValue())
                    .collect(Collectors.joining("; ", "answered by: ", "")));
        }
    }
}
