package org.headfall.scenarios.rerun;

import java.io.IOException;
import org.headfall.scenarios.problem.JsonFault;
import tools.jackson.core.JacksonException;
import tools.jackson.core.TokenStreamLocation;

/** That a file of the results cannot be read as what its name says; files of the new run are whole. */
final class UnreadableException extends IOException {

    private static final long serialVersionUID = 1;

    private UnreadableException(Exception cause) {
        super("cannot be read any more" + reason(cause), cause);
    }

    /** Reads from a file of the results. */
    @FunctionalInterface
    interface Reading<T> {
        T read() throws IOException;
    }

    /**
     * Reads from a file of the results. Libraries say in many ways that a file is damaged, unchecked ones among them.
     *
     * @throws UnreadableException if it cannot be read
     */
    static <T> T ifNotRead(Reading<T> reading) throws UnreadableException {
        try {
            return reading.read();
        } catch (IOException | RuntimeException e) {
            throw new UnreadableException(e);
        }
    }

    /** The first line of what the cause says: what follows in some is for programmers. */
    private static String reason(Exception cause) {
        String message = cause instanceof JacksonException broken ? ofJson(broken) : cause.getMessage();
        return message == null || message.isBlank()
                ? ""
                : ": " + message.lines().findFirst().orElseThrow();
    }

    private static String ofJson(JacksonException broken) {
        TokenStreamLocation at = broken.getLocation();
        String place = at == null || at.getLineNr() < 1
                ? ""
                : "line " + at.getLineNr() + ", column " + at.getColumnNr() + ": ";
        return place + JsonFault.found(broken);
    }
}
