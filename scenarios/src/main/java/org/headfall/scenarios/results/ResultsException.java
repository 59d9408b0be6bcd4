package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Results cannot be written or read. The message says where, what was found, and what can be done. */
public final class ResultsException extends IOException {

    private static final long serialVersionUID = 1L;

    /** What is wrong. */
    public enum Kind {
        /** There are results under this name and replacing them was not asked for. */
        EXISTS,
        /** Something that no run has written stands where results should go. */
        FOREIGN,
        /** Another run is writing results of this name. */
        IN_USE,
        /** The folder cannot be made or written to. */
        NOT_WRITABLE,
        /** The disk is full. */
        DISK_FULL,
        /** The folder holds no finished results. */
        NOT_FINISHED,
        /** A file of the results is damaged or was changed. */
        DAMAGED,
        /** Two results cannot be put side by side. */
        NOT_COMPARABLE,
        /** The results are those of another aquifer or grid. */
        OF_ANOTHER_AQUIFER
    }

    private final Kind kind;
    private final String place;

    /**
     * What is wrong with results.
     *
     * @param kind what kind of thing
     * @param place folder or file at fault
     * @param message what was found and what is allowed or can be done
     */
    public ResultsException(Kind kind, Path place, String message) {
        super(place + ": " + message);
        this.kind = kind;
        this.place = place.toString();
    }

    ResultsException(Kind kind, Path place, String message, @Nullable Throwable cause) {
        super(place + ": " + message, cause);
        this.kind = kind;
        this.place = place.toString();
    }

    /**
     * That a file is not what was written, with what can be done about it.
     *
     * @param file the file
     * @param found what was found
     * @param cause what reading it threw, if it threw
     * @return the exception to throw
     */
    public static ResultsException damaged(Path file, String found, @Nullable Throwable cause) {
        return new ResultsException(
                Kind.DAMAGED, file, found + "; copy the folder anew or run the scenario again (headfall run)", cause);
    }

    /** What is wrong. */
    public Kind kind() {
        return kind;
    }

    /** Folder or file at fault. */
    public String place() {
        return place;
    }
}
