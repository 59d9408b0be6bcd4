package org.headfall.scenarios.sweep.work;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;

/**
 * What a sweep takes, as far as it can be said before the first run: memory and time by the number of cells and steps, which
 * is rough, and so the time is a range.
 */
public final class SweepForecast {

    /** Found on free processors with fields of 400 to 65,536 cells: between half and three times the count. */
    private static final double LEAST = 0.5;

    private static final double MOST = 3;

    /** Until Java has compiled what is called often (s). */
    private static final double WARM_UP = 3;

    /** As sizes of memory are told (bytes). */
    public static final long MEGABYTE = 1_000_000;

    private final Workload workload;
    private final int all;
    private final SharedResponses responses;

    private SweepForecast(Workload workload, int all, SharedResponses responses) {
        this.workload = workload;
        this.all = all;
        this.responses = responses;
    }

    /**
     * The forecast for a sweep.
     *
     * @param sweep the sweep
     * @return its forecast
     */
    public static SweepForecast of(SweepDocument sweep) {
        RunList runs = new RunList(sweep);
        SharedResponses responses = new SharedResponses(sweep, runs, "", 1);
        return new SweepForecast(Workload.of(sweep), runs.size(), responses);
    }

    /** Runs of the whole sweep. */
    public int runs() {
        return all;
    }

    /** How many of these differ from others in rates alone and are answered from responses that they share. */
    public int shared() {
        return responses.shared();
    }

    /** Memory of one run (bytes). */
    public long memoryOfRun() {
        return workload.memoryOfRun();
    }

    /**
     * Threads that fit into some memory; at least one.
     *
     * @param wanted threads that are wanted
     * @param memory memory (bytes)
     */
    public int threads(int wanted, long memory) {
        return workload.threads(wanted, memory);
    }

    /** How much memory runs take, in words. */
    public String memory(int threads) {
        return String.format(
                Locale.ROOT,
                "about %d MB of memory for %d run%s at a time",
                Math.max(1, memoryOfRun() * threads / MEGABYTE),
                threads,
                threads == 1 ? "" : "s");
    }

    /**
     * How long all runs take.
     *
     * @param threads how many at a time
     */
    public TimeRange time(int threads) {
        return time(IntStream.rangeClosed(1, all).boxed().toList(), threads);
    }

    /**
     * How long some runs take, with the responses that they need.
     *
     * @param numbers the numbers of these runs, from 1
     * @param threads how many at a time
     */
    TimeRange time(List<Integer> numbers, int threads) {
        SharedResponses.Use use = responses.useBy(numbers);
        double seconds = workload.seconds(numbers.size() - use.answers() + use.groups(), use.answers(), threads);
        return new TimeRange(LEAST * seconds, MOST * seconds + WARM_UP);
    }

    /**
     * Whether time that is allowed is enough, in words.
     *
     * @param time how long some runs take
     * @param runs how many these are
     * @param budget time that is allowed (s), if it is limited
     * @return a line; empty if it is enough
     */
    static String shortage(TimeRange time, int runs, OptionalDouble budget) {
        if (budget.isEmpty() || time.most() <= budget.getAsDouble()) {
            return "";
        }
        double allowed = budget.getAsDouble();
        long least = Math.min(runs, Math.round(runs * allowed / time.most()));
        long most = Math.min(runs, Math.round(runs * allowed / time.least()));
        return String.format(
                Locale.ROOT,
                "that %s more than the %s allowed: %s of these %d runs will probably be made; the same command goes"
                        + " on with the rest",
                time.least() > allowed ? "is" : "may be",
                Durations.words(allowed),
                least == most ? "about " + least : "between " + least + " and " + most,
                runs);
    }
}
