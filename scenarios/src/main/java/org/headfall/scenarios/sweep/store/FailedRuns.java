package org.headfall.scenarios.sweep.store;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The failed runs of a sweep by reason, in the order in which reasons first occur. Reasons that differ in values alone are one:
 * those of a variable differ from run to run, and each would be a reason of its own.
 */
public final class FailedRuns {

    /** Run numbers of a reason that are named; the store has them all. */
    private static final int MOST_NAMED = 10;

    /** Reasons that are listed; more are not read. */
    private static final int MOST_REASONS = 10;

    /** Runs whose reasons are the same but for their values, by the reason with its values left out. */
    private final Map<String, Alike> alike = new LinkedHashMap<>();

    /** Runs with one reason but for its values. */
    private static final class Alike {
        private final String first;
        private final List<Integer> numbers = new ArrayList<>();
        private boolean differ;

        Alike(String first) {
            this.first = first;
        }

        void add(int number, String reason) {
            numbers.add(number);
            differ = differ || !first.equals(reason);
        }

        String reason() {
            return differ ? first + " (so in the first of them; other numbers in others)" : first;
        }
    }

    /**
     * The failed runs of a store.
     *
     * @param store the store
     * @return its failed runs
     * @throws StoreException if the store cannot be read
     */
    public static FailedRuns of(SweepStore store) throws StoreException {
        FailedRuns failed = new FailedRuns();
        store.forEach(failed::add);
        return failed;
    }

    /** Counts a run if it failed. */
    public void add(StoredRun run) {
        if (run.status() == StoredRun.Status.FAILED) {
            add(run.number(), run.reason());
        }
    }

    /**
     * Counts a failed run.
     *
     * @param number its number
     * @param reason why it failed
     */
    public void add(int number, String reason) {
        String line = inOneLine(reason);
        alike.computeIfAbsent(ReasonValues.without(line), withoutValues -> new Alike(line))
                .add(number, line);
    }

    /** A reason as one line: it may list problems, each in lines of its own. */
    public static String inOneLine(String reason) {
        return reason.strip().replaceAll("\\s*\\R\\s*", "; ");
    }

    /** How many runs failed. */
    public int count() {
        return alike.values().stream().mapToInt(of -> of.numbers.size()).sum();
    }

    /** Reasons, each in one line as its first run gave it, with the numbers of its runs. */
    public Map<String, List<Integer>> byReason() {
        Map<String, List<Integer>> reasons = new LinkedHashMap<>();
        alike.values().forEach(of -> reasons.put(of.reason(), Collections.unmodifiableList(of.numbers)));
        return Collections.unmodifiableMap(reasons);
    }

    /**
     * The first reasons with their runs, a line each, and how many more reasons there are.
     *
     * @param between what stands between the runs and their reason
     * @return lines; none if no run failed
     */
    public List<String> lines(String between) {
        List<String> lines = alike.values().stream()
                .limit(MOST_REASONS)
                .map(of -> named(of.numbers) + between + of.reason())
                .collect(Collectors.toCollection(ArrayList::new));
        if (alike.size() > MOST_REASONS) {
            lines.add("and " + (alike.size() - MOST_REASONS) + " more reasons");
        }
        return lines;
    }

    /** Numbers of runs in words: the first ones, and how many more there are. */
    public static String named(List<Integer> numbers) {
        String first = numbers.stream().limit(MOST_NAMED).map(String::valueOf).collect(Collectors.joining(", "));
        String more = numbers.size() > MOST_NAMED ? " and " + (numbers.size() - MOST_NAMED) + " more" : "";
        return (numbers.size() == 1 ? "run " : "runs ") + first + more;
    }

    /**
     * How many runs failed, and the first reason with its runs.
     *
     * @param all how many runs the sweep has
     * @return sentences; empty if no run failed
     */
    public String sentence(int all) {
        if (alike.isEmpty()) {
            return "";
        }
        Alike first = alike.values().iterator().next();
        String reasons = alike.size() == 1 ? "Reason" : "First of " + alike.size() + " reasons";
        return count() + " of " + all + " runs failed. " + reasons + " (" + named(first.numbers) + "): "
                + first.reason();
    }
}
