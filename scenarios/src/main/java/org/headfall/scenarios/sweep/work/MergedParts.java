package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.store.Counts;
import org.headfall.scenarios.sweep.store.Definition;
import org.headfall.scenarios.sweep.store.StoreException;
import org.headfall.scenarios.sweep.store.StoredRun;
import org.headfall.scenarios.sweep.store.SweepStore;

/** Puts the stores of the parts of a sweep together into one. */
public final class MergedParts {

    private static final int GROUP = 1000;

    private MergedParts() {}

    /**
     * Takes every recorded run of every part into the store of the whole sweep. Doing it again adds what has been recorded
     * since; what is there stays.
     *
     * @param sweep the sweep
     * @param document its file
     * @param folder folder with the stores of the parts
     * @param program program and version
     * @return how many runs of the whole are in which state
     * @throws IOException if a store cannot be read or written, or is of another sweep; before anything is written,
     *     if there are no parts
     */
    public static Counts merge(SweepDocument sweep, Path document, Path folder, String program) throws IOException {
        List<Path> parts = parts(folder);
        if (parts.isEmpty()) {
            throw new StoreException(
                    folder,
                    "holds no store of a part (sweep-part-K-of-N.sqlite); name the folder of the parts with --output, or"
                            + " make parts with --part K/N");
        }
        Definition definition = new SweepPlan(sweep, document, program).definition(new RunList(sweep), Part.WHOLE);
        Path whole = folder.resolve(Part.WHOLE.storeName());
        try (SweepStore store = new StoreOfSweep(whole, definition).open(false)) {
            for (Path part : parts) {
                try (SweepStore from = SweepStore.read(part)) {
                    takeOver(from, store);
                }
            }
            return store.counts();
        }
    }

    private static List<Path> parts(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> String.valueOf(file.getFileName()).matches("sweep-part-\\d+-of-\\d+\\.sqlite"))
                    .sorted()
                    .toList();
        }
    }

    private static void takeOver(SweepStore from, SweepStore store) throws IOException {
        List<StoredRun> rows = new ArrayList<>();
        from.forEach(row -> {
            if (row.status() != StoredRun.Status.PLANNED) {
                rows.add(row);
            }
        });
        for (int begin = 0; begin < rows.size(); begin += GROUP) {
            store.takeOver(rows.subList(begin, Math.min(rows.size(), begin + GROUP)));
        }
    }
}
