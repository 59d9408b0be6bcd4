package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.sweep.store.Definition;
import org.headfall.scenarios.sweep.store.StoreException;
import org.headfall.scenarios.sweep.store.StoredRun;
import org.headfall.scenarios.sweep.store.SweepStore;
import org.jspecify.annotations.Nullable;

/** Opens the store of a sweep, new or as it was left, and sees to it that it is of this sweep. */
final class StoreOfSweep {

    private static final Map<String, String> WHAT_MAY_DIFFER = whatMayDiffer();

    /** Rows named in a message. */
    private static final int MOST_TOLD = 5;

    private final Path file;
    private final Definition definition;

    StoreOfSweep(Path file, Definition definition) {
        this.file = file;
        this.definition = definition;
    }

    private static Map<String, String> whatMayDiffer() {
        Map<String, String> words = new LinkedHashMap<>();
        words.put(Definition.BASE_KEY, "the base scenario, one of its files, or what the variables stand for");
        words.put(Definition.RUNS_KEY, "what varies or how runs are chosen");
        words.put(Definition.FIGURES_KEY, "the figures that are kept");
        words.put(Definition.PROGRAM, "the program");
        return words;
    }

    /**
     * The store, locked for writing.
     *
     * @param acceptChanges whether the store of another sweep is replaced; runs that are the same in both are taken
     *     over, and the old store stays under another name
     */
    SweepStore open(boolean acceptChanges) throws IOException {
        if (!Files.exists(file)) {
            return SweepStore.create(file, definition);
        }
        SweepStore store = SweepStore.open(file);
        List<String> differences;
        try {
            differences = differences(store);
            if (differences.isEmpty()) {
                requireRows(store);
                return store;
            }
        } catch (StoreException e) {
            store.close();
            throw e;
        }
        if (!acceptChanges) {
            store.close();
            throw new StoreException(
                    file,
                    "is of another sweep; changed since: " + String.join("; ", differences)
                            + ". Take the changes back, choose another folder with --output, or give --accept-changes:"
                            + " runs that stay the same are kept, the others are made anew, and the old store stays"
                            + " beside the new one");
        }
        return replaced(store);
    }

    /**
     * Requires the store to be of this sweep, whatever version of the program made its runs.
     *
     * @param what what cannot be done otherwise, for the message
     */
    void requireSame(String what) throws IOException {
        try (SweepStore store = SweepStore.read(file)) {
            List<String> differences = differences(store);
            if (!store.text(Definition.PROGRAM).equals(definition.texts().get(Definition.PROGRAM))) {
                differences.remove(differences.size() - 1);
            }
            if (!differences.isEmpty()) {
                throw new StoreException(
                        file,
                        "is of another sweep, so that " + what + "; changed since: " + String.join("; ", differences)
                                + ". Take the changes back, or make the sweep again");
            }
        }
    }

    private List<String> differences(SweepStore store) throws StoreException {
        List<String> differences = new ArrayList<>();
        for (Map.Entry<String, String> may : WHAT_MAY_DIFFER.entrySet()) {
            String before = store.text(may.getKey());
            String now = definition.texts().getOrDefault(may.getKey(), "");
            if (!before.equals(now)) {
                boolean names = may.getKey().equals(Definition.PROGRAM);
                differences.add(names ? may.getValue() + " (" + before + ", now " + now + ")" : may.getValue());
            }
        }
        return differences;
    }

    /** Rows may have been changed, added or removed by hand; going on with them would spoil the answers unseen. */
    private void requireRows(SweepStore store) throws StoreException {
        Map<Integer, String> planned = new HashMap<>();
        definition.runs().forEach(run -> planned.put(run.number(), run.inputs() + run.hash()));
        List<String> wrong = new ArrayList<>();
        store.forEach(row -> {
            @Nullable String inputs = planned.remove(row.number());
            if (inputs == null) {
                wrong.add("row " + row.number() + " is no run of this sweep");
            } else if (!inputs.equals(row.inputs() + row.hash())) {
                wrong.add("inputs or hash of row " + row.number() + " are not those of the run");
            }
        });
        planned.keySet().stream().sorted().forEach(number -> wrong.add("row " + number + " is missing"));
        if (!wrong.isEmpty()) {
            String more = wrong.size() > MOST_TOLD ? "; and " + (wrong.size() - MOST_TOLD) + " more" : "";
            throw new StoreException(
                    file,
                    "the table runs is not as headfall wrote it: "
                            + String.join("; ", wrong.subList(0, Math.min(MOST_TOLD, wrong.size()))) + more
                            + ". Put it right, or move the file away to begin anew");
        }
    }

    private SweepStore replaced(SweepStore old) throws IOException {
        List<StoredRun> done = new ArrayList<>();
        boolean sameFigures =
                old.text(Definition.FIGURES_KEY).equals(definition.texts().get(Definition.FIGURES_KEY));
        if (sameFigures) {
            old.forEach(row -> {
                if (row.status() != StoredRun.Status.PLANNED) {
                    done.add(row);
                }
            });
        }
        old.close();
        String time = Instant.now().truncatedTo(ChronoUnit.SECONDS).toString().replace(":", "");
        String name = String.valueOf(file.getFileName()).replace(".sqlite", "");
        Files.move(file, file.resolveSibling(name + "-before-" + time + ".sqlite"), StandardCopyOption.ATOMIC_MOVE);
        SweepStore fresh = SweepStore.create(file, definition);
        fresh.takeOver(done);
        return fresh;
    }
}
