package org.headfall.cli;

import java.io.IOException;
import java.nio.file.Path;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.results.SweepCsv;
import org.headfall.scenarios.sweep.store.SweepStore;

/** Writes what is made of a store for people. */
final class SweepOutputs {

    private SweepOutputs() {}

    static void write(SweepDocument document, Path storeFile, Path folder) throws IOException {
        try (SweepStore store = SweepStore.read(storeFile)) {
            SweepCsv.write(folder.resolve("sweep.csv"), document, store);
        }
    }
}
