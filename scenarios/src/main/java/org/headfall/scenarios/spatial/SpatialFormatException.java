package org.headfall.scenarios.spatial;

import java.nio.file.Path;

/**
 * A map file (raster, features) or a coordinate reference that cannot be used: the place, what was found there and
 * what is allowed.
 *
 * <p>Line and column count from 1; 0 means that the place is not known or that the file is binary. Readers throw
 * nothing else, whatever the bytes in the file.
 */
public final class SpatialFormatException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String file;
    private final int line;
    private final int column;
    private final String found;
    private final String allowed;

    private SpatialFormatException(String file, int line, int column, String found, String allowed) {
        super(place(file, line, column) + ": found " + found + "; allowed: " + allowed);
        this.file = file;
        this.line = line;
        this.column = column;
        this.found = found;
        this.allowed = allowed;
    }

    /**
     * A fault of a whole file.
     *
     * @param file the file
     * @param found what was found, to be read after the word "found"
     * @param allowed what is allowed, to be read after the word "allowed"
     * @return the exception, to be thrown
     */
    public static SpatialFormatException of(Path file, String found, String allowed) {
        return new SpatialFormatException(file.toString(), 0, 0, found, allowed);
    }

    /**
     * A fault at a place in a text file.
     *
     * @param file the file
     * @param line line, from 1; 0 if not known
     * @param column column, from 1; 0 if not known
     * @param found what was found
     * @param allowed what is allowed
     * @return the exception, to be thrown
     */
    public static SpatialFormatException at(Path file, int line, int column, String found, String allowed) {
        return new SpatialFormatException(file.toString(), line, column, found, allowed);
    }

    /**
     * A fault of something that does not come from a map file, such as the code of a coordinate reference.
     *
     * @param subject what is at fault, in the place of the file name
     * @param found what was found
     * @param allowed what is allowed
     * @return the exception, to be thrown
     */
    public static SpatialFormatException of(String subject, String found, String allowed) {
        return new SpatialFormatException(subject, 0, 0, found, allowed);
    }

    /**
     * The same fault with the exception that revealed it.
     *
     * @param cause the exception of a library or of the file system
     * @return this exception
     */
    public SpatialFormatException causedBy(Throwable cause) {
        initCause(cause);
        return this;
    }

    /** {@return the file, or the subject if no file is at fault} */
    public String file() {
        return file;
    }

    /** {@return the line, from 1, or 0 if not known} */
    public int line() {
        return line;
    }

    /** {@return the column, from 1, or 0 if not known} */
    public int column() {
        return column;
    }

    /** {@return what was found} */
    public String found() {
        return found;
    }

    /** {@return what is allowed} */
    public String allowed() {
        return allowed;
    }

    private static String place(String file, int line, int column) {
        if (line == 0) {
            return file;
        }
        return column == 0 ? file + ":" + line : file + ":" + line + ":" + column;
    }
}
