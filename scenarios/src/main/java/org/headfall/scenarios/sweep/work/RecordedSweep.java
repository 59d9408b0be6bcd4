package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;

/** Whether what was recorded is of a sweep as its documents are now. */
public final class RecordedSweep {

    private RecordedSweep() {}

    /**
     * Requires the runs in a folder of results to be those of a sweep as it is now. Where nothing has been recorded nothing
     * is required.
     *
     * @param sweep the sweep
     * @param document its file
     * @param folder folder of its results
     * @param program program and version; another one may have made the runs
     * @param otherwise what cannot be done if they are not, for the message
     * @throws IOException if they are not, or a file cannot be read; the message names what has changed
     */
    public static void requireUnchanged(
            SweepDocument sweep, Path document, Path folder, String program, String otherwise) throws IOException {
        Path store = folder.resolve(Part.WHOLE.storeName());
        if (Files.exists(store)) {
            new StoreOfSweep(store, new SweepPlan(sweep, document, program).definition(new RunList(sweep), Part.WHOLE))
                    .requireSame(otherwise);
        }
    }
}
