package org.headfall.cli;

import java.io.IOException;
import java.nio.file.Path;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.page.SweepPageWriter;
import org.headfall.scenarios.sweep.results.SweepCsv;
import org.headfall.scenarios.sweep.results.SweepTable;
import org.headfall.scenarios.sweep.store.StoreException;
import org.headfall.scenarios.sweep.store.SweepStore;

/** Writes what is made of a store for people. */
final class SweepOutputs {

    private SweepOutputs() {}

    static SweepTable write(SweepDocument document, Path storeFile, Path folder) throws IOException {
        try (SweepStore store = SweepStore.read(storeFile)) {
            SweepCsv.write(folder.resolve("sweep.csv"), document, store);
            SweepTable table = SweepTable.read(document, store);
            table.exceedance().write(folder);
            SweepPageWriter.write(table, ProgramVersion.text(), folder.resolve("sweep.html"));
            return table;
        } catch (StoreException e) {
            throw e;
        } catch (IOException e) {
            throw ResultsFolder.explained(e, folder);
        }
    }
}
