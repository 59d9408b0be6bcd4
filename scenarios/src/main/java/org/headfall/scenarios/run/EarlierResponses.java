package org.headfall.scenarios.run;

import java.nio.file.Path;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.headfall.scenarios.results.FileChanges;
import org.headfall.scenarios.results.ReadResponses;
import org.headfall.scenarios.results.ResponsesReader;
import org.headfall.scenarios.results.ResultsException;

/**
 * Unit responses of an earlier run, read by a thread of their own: while a document is read, for instance. After them that
 * thread makes them ready to be superposed, and looks at the other files of the run.
 */
public final class EarlierResponses {

    private final Path folder;
    private final FutureTask<ReadResponses> reading;
    private final FutureTask<FileChanges> looking;

    /** Whoever needs what it prepares finds it, or finds it anew, so nobody asks for its result. */
    private final FutureTask<Void> preparing;

    /**
     * Begins to read.
     *
     * @param folder results of the run; what is wrong with them is thrown when the responses are asked for
     */
    public EarlierResponses(Path folder) {
        this.folder = folder;
        reading = new FutureTask<>(() -> ResponsesReader.read(folder));
        looking = new FutureTask<>(() -> FileChanges.atAGlance(folder));
        preparing = new FutureTask<>(() -> {
            read().responses().prepare();
            return null;
        });
        Thread thread = new Thread(
                () -> {
                    reading.run();
                    preparing.run();
                    looking.run();
                },
                "reading responses");
        thread.setDaemon(true);
        thread.start();
    }

    Path folder() {
        return folder;
    }

    /** The responses, once they are read. */
    ReadResponses read() throws ResultsException {
        return result(reading);
    }

    /**
     * How files of the run differ from what it wrote, once they are looked at.
     *
     * @return what {@link FileChanges#atAGlance} found
     * @throws ResultsException if the summary of the run is missing, damaged or of another format, or a file cannot be read
     */
    public FileChanges changes() throws ResultsException {
        return result(looking);
    }

    private <T> T result(FutureTask<T> task) throws ResultsException {
        try {
            return task.get();
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
