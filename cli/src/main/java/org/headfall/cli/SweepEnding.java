package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import org.headfall.cli.answer.TextBlock;
import org.headfall.scenarios.sweep.store.Counts;
import org.headfall.scenarios.sweep.store.FailedRuns;
import org.headfall.scenarios.sweep.store.SweepStore;

/** Says at the end of a sweep which runs failed, and what the process answers. */
final class SweepEnding {

    private SweepEnding() {}

    /**
     * Names the failed runs on the error output, whatever else is to be silent.
     *
     * @param storeFile the store
     * @param counts its runs
     * @param err the error output
     * @return {@link ExitCode#INCOMPLETE} if runs are left; else {@link ExitCode#INPUT} if all failed, which is the
     *     document's fault, and {@link ExitCode#SOME_FAILED} if some did
     * @throws IOException if the store cannot be read
     */
    static ExitCode of(Path storeFile, Counts counts, PrintWriter err) throws IOException {
        if (counts.failed() > 0) {
            try (SweepStore store = SweepStore.read(storeFile)) {
                new TextBlock(err).message("headfall: " + FailedRuns.of(store).sentence(counts.all()));
                err.flush();
            }
        }
        if (counts.planned() > 0) {
            return ExitCode.INCOMPLETE;
        }
        if (counts.failed() > 0) {
            return counts.finished() == 0 ? ExitCode.INPUT : ExitCode.SOME_FAILED;
        }
        return ExitCode.DONE;
    }
}
