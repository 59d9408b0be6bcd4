package org.headfall.scenarios.run;

import java.nio.file.Path;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.headfall.scenarios.results.ReadResponses;
import org.headfall.scenarios.results.ResponsesReader;
import org.headfall.scenarios.results.ResultsException;

/** Unit responses of an earlier run, read by a thread of their own: while a document is read, for instance. */
public final class EarlierResponses {

    private final Path folder;
    private final FutureTask<ReadResponses> reading;

    /**
     * Begins to read.
     *
     * @param folder results of the run; what is wrong with them is thrown when the responses are asked for
     */
    public EarlierResponses(Path folder) {
        this.folder = folder;
        reading = new FutureTask<>(() -> ResponsesReader.read(folder));
        Thread thread = new Thread(reading, "reading responses");
        thread.setDaemon(true);
        thread.start();
    }

    Path folder() {
        return folder;
    }

    /** The responses, once they are read. */
    ReadResponses read() throws ResultsException {
        try {
            return reading.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while responses were read", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof ResultsException unreadable) {
                throw unreadable;
            }
            if (e.getCause() instanceof Error error) {
                throw error;
            }
            if (e.getCause() instanceof RuntimeException fault) {
                throw fault;
            }
            throw new IllegalStateException("responses in " + folder + " could not be read", e.getCause());
        }
    }
}
