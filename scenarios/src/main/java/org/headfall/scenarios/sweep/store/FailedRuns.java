package org.headfall.scenarios.sweep.store;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The failed runs of a sweep by reason, in the order in which reasons first occur. Reasons that differ in numbers alone are one:
 * the values of a variable differ from run to run, and each would be a reason of its own.
 */
public final class FailedRuns {

    /** Run numbers of a reason that are named; the store has them all. */
    private static final int MOST_NAMED = 10;

    /** A number that stands by itself; those in names, such as "Town 1a", tell one reason from another. */
    private static final Pattern NUMBER =
            Pattern.compile("(?<![\\p{L}\\d_.])[-+]?\\d[\\d,]*(\\.\\d+)?([eE][-+]?\\d+)?(?![\\p{L}\\d_])");

    private final Map<String, List<Integer>> byReason = new LinkedHashMap<>();
    private final Map<String, String> firstReasons = new HashMap<>();

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
        String first = firstReasons.computeIfAbsent(NUMBER.matcher(line).replaceAll("#"), withoutNumbers -> line);
        byReason.computeIfAbsent(first, known -> new ArrayList<>()).add(number);
    }

    /** A reason as one line: it may list problems, each in lines of its own. */
    public static String inOneLine(String reason) {
        return reason.strip().replaceAll("\\s*\\R\\s*", "; ");
    }

    /** How many runs failed. */
    public int count() {
        return byReason.values().stream().mapToInt(List::size).sum();
    }

    /** Reasons, each in one line as its first run gave it, with the numbers of its runs. */
    public Map<String, List<Integer>> byReason() {
        return Collections.unmodifiableMap(byReason);
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
        if (byReason.isEmpty()) {
            return "";
        }
        Map.Entry<String, List<Integer>> first = byReason.entrySet().iterator().next();
        String reasons = byReason.size() == 1 ? "Reason" : "First of " + byReason.size() + " reasons";
        return count() + " of " + all + " runs failed. " + reasons + " (" + named(first.getValue()) + "): "
                + first.getKey();
    }
}
