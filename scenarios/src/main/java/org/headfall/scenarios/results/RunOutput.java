package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;

/** A file, or several, made of a finished run. */
@FunctionalInterface
public interface RunOutput {

    /**
     * Writes the file into a folder. It must appear under its name only when it is whole.
     *
     * @param folder folder of the results
     * @param run the run
     * @throws IOException if it cannot be written
     */
    void write(Path folder, FinishedRun run) throws IOException;
}
