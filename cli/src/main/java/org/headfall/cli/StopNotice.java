package org.headfall.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;

/** Says what is kept if the process is told to end in the middle of its work. */
final class StopNotice implements AutoCloseable {

    private final Thread atShutdown;

    private StopNotice(Thread atShutdown) {
        this.atShutdown = atShutdown;
    }

    /**
     * Begins to watch over results that are being written.
     *
     * @param target final folder of the results
     * @param terminal what is at the other end of the streams
     * @param err receives the notice
     * @return what ends the watch when closed
     */
    static StopNotice whileWriting(Path target, Terminal terminal, PrintWriter err) {
        Path part = target.toAbsolutePath().normalize();
        Path unfinished = part.resolveSibling(part.getFileName() + ".part");
        return saying(
                () -> terminal.message(
                        err,
                        "headfall: stopped before the end."
                                + (Files.exists(unfinished) ? " What was recorded so far is in " + unfinished : "")),
                err);
    }

    /**
     * Begins to watch.
     *
     * @param notice writes the notice
     * @param err receives it
     * @return what ends the watch when closed
     */
    static StopNotice saying(Runnable notice, PrintWriter err) {
        Thread thread = new Thread(
                () -> {
                    err.println();
                    notice.run();
                    err.flush();
                },
                "stop notice");
        Runtime.getRuntime().addShutdownHook(thread);
        return new StopNotice(thread);
    }

    @Override
    public void close() {
        try {
            Runtime.getRuntime().removeShutdownHook(atShutdown);
        } catch (IllegalStateException ending) {
            // the process is ending already, and the notice has been given
            return;
        }
    }
}
