package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.stream.Collectors;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.Variable;

/**
 * Unit responses for runs that differ in nothing but rates of bores. Which runs share them follows from the sweep document
 * alone, never from what happens to be computed already, so that a run gets the same figures in any order and any part.
 */
final class SharedResponses {

    /** Fewer runs are simulated: responses take about as long as a run or two. */
    private static final int LEAST_RUNS = 4;

    private final SweepDocument sweep;
    private final String program;
    private final RunList runs;
    private final List<Variable> rates;
    private final List<Variable> others;
    private final Map<String, Integer> groups = new HashMap<>();
    private final Map<String, FutureTask<RateGroup>> kept;

    /**
     * Groups of a sweep.
     *
     * @param sweep the sweep
     * @param runs its runs
     * @param program program and version
     * @param threads runs at a time
     */
    SharedResponses(SweepDocument sweep, RunList runs, String program, int threads) {
        this.sweep = sweep;
        this.program = program;
        this.runs = runs;
        rates = sweep.variables().stream().filter(SharedResponses::isRate).toList();
        others =
                sweep.variables().stream().filter(variable -> !isRate(variable)).toList();
        boolean any = !rates.isEmpty() && !sweep.needsGrid();
        if (any) {
            runs.forEach(inputs -> groups.merge(group(inputs), 1, Integer::sum));
        }
        int most = 2 * threads + 2;
        kept = new LinkedHashMap<>(most, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<String, FutureTask<RateGroup>> eldest) {
                return size() > most;
            }
        };
    }

    private static boolean isRate(Variable variable) {
        return variable.keys().stream()
                .allMatch(key -> key.text().startsWith("bores.") && key.text().endsWith(".rate"));
    }

    private String group(Map<Variable, Input> inputs) {
        return others.stream()
                .map(variable -> Objects.requireNonNull(inputs.get(variable)).text())
                .collect(Collectors.joining("\n"));
    }

    private boolean isShared(String group) {
        return groups.getOrDefault(group, 0) >= LEAST_RUNS;
    }

    /** How many runs of the whole sweep are answered this way if their accuracy allows. */
    int shared() {
        return groups.values().stream()
                .filter(size -> size >= LEAST_RUNS)
                .mapToInt(Integer::intValue)
                .sum();
    }

    /**
     * How many responses are computed, and how many runs are answered from them, if only some runs are made.
     *
     * @param numbers the numbers of these runs
     */
    Use useBy(List<Integer> numbers) {
        Set<String> needed = new HashSet<>();
        int answers = 0;
        for (int number : numbers) {
            String group = groups.isEmpty() ? "" : group(runs.get(number - 1));
            if (isShared(group)) {
                answers++;
                needed.add(group);
            }
        }
        return new Use(needed.size(), answers);
    }

    /**
     * What some runs use of the responses.
     *
     * @param groups responses that are computed
     * @param answers runs that are answered from them
     */
    record Use(int groups, int answers) {}

    /**
     * Sample by sample over all choices, so that a sweep that is cut short has the same samples of each; but runs that share
     * responses one after the other.
     */
    List<Integer> inOrderOfWork(List<Integer> numbers) {
        if (shared() == 0) {
            return numbers.stream()
                    .sorted(Comparator.comparingInt(this::sample).thenComparing(Comparator.naturalOrder()))
                    .toList();
        }
        return numbers.stream()
                .sorted(Comparator.comparing((Integer number) -> group(runs.get(number - 1)))
                        .thenComparing(Comparator.naturalOrder()))
                .toList();
    }

    private int sample(int number) {
        return runs.sample(number - 1).orElse(Integer.MAX_VALUE);
    }

    /**
     * The group of a run, if it shares responses; made by the first that asks, awaited by the others.
     *
     * @throws InputException if the run is not valid on the grid
     * @throws IOException if a file cannot be read any more
     */
    Optional<RateGroup> forRun(Map<Variable, Input> inputs) throws InputException, IOException {
        String group = groups.isEmpty() ? "" : group(inputs);
        if (!isShared(group)) {
            return Optional.empty();
        }
        FutureTask<RateGroup> task;
        synchronized (kept) {
            task = kept.computeIfAbsent(
                    group, missing -> new FutureTask<>(() -> new RateGroup(sweep, rates, inputs, program)));
        }
        task.run();
        try {
            return Optional.of(task.get());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while responses were computed", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof Error fatal) {
                throw fatal;
            }
            if (e.getCause() instanceof InputException invalid) {
                throw invalid;
            }
            if (e.getCause() instanceof IOException unreadable) {
                throw unreadable;
            }
            throw new IllegalStateException(String.valueOf(e.getCause()), e.getCause());
        }
    }
}
