package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Queue;
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

    /** Time for which runs are not typical: Java compiles what is called often (s). */
    private static final double WARM = 10;

    private final SweepSettings settings;
    private final StoreWriter writer;
    private final SweepLog log;
    private final SweepProgress progress;
    private final Counts before;
    private final long started;
    private final Map<String, Integer> ways = new TreeMap<>();
    private final Queue<Double> last = new ArrayDeque<>();
    private double secondsInAll;
    private boolean measured;
    private final double begun;
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
        begun = elapsed();
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

    /** Runs after which it is said how long the others will take. */
    static int timedRuns(int threads) {
        return TIMED_RUNS * threads;
    }

    /** After the first runs, how long the others will take: as the faster half of the last few, or as the slower half. */
    private void sayHowLong(RunOutcome outcome) throws IOException {
        if (measured) {
            return;
        }
        int timed = timedRuns(settings.threads());
        secondsInAll += outcome.seconds();
        last.add(outcome.seconds());
        if (last.size() > timed) {
            last.remove();
        }
        double sinceBegun = elapsed() - begun;
        if (last.size() < timed || sinceBegun < WARM || made == before.planned()) {
            return;
        }
        measured = true;
        TimeRange ofRun = spread(last);
        int left = before.planned() - made;
        double atATime = Math.max(1, secondsInAll / sinceBegun);
        TimeRange time = new TimeRange(ofRun.least() * left / atATime, ofRun.most() * left / atATime);
        say(String.format(
                Locale.ROOT,
                "a run takes %.2g to %.2g s, the other %d runs %s",
                ofRun.least(),
                ofRun.most(),
                left,
                time.words()));
        OptionalDouble budget = settings.budget();
        String shortage = SweepForecast.shortage(
                time,
                left,
                budget.isEmpty() ? budget : OptionalDouble.of(Math.max(0, budget.getAsDouble() - elapsed())));
        if (!shortage.isEmpty()) {
            say(shortage);
        }
    }

    /** Mean of the faster half of times, and of the slower half. */
    static TimeRange spread(Collection<Double> times) {
        double[] sorted = times.stream().mapToDouble(time -> time).sorted().toArray();
        int half = (sorted.length + 1) / 2;
        return new TimeRange(
                Arrays.stream(sorted, 0, half).average().orElse(0),
                Arrays.stream(sorted, sorted.length - half, sorted.length)
                        .average()
                        .orElse(0));
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
