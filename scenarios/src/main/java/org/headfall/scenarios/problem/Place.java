package org.headfall.scenarios.problem;

/**
 * A place in a text file the user wrote. Lines and columns count from 1; 0 stands for "the file (or the line) as a
 * whole". A column counts characters (Unicode code points), a tab as one.
 *
 * @param file name of the file as the user knows it: relative to the folder of the scenario document
 * @param line line, from 1, or 0 for the whole file
 * @param column column, from 1, or 0 for the whole line
 */
public record Place(String file, int line, int column) implements Comparable<Place> {
    /**
     * Checks the parts.
     *
     * @throws IllegalArgumentException if line or column is negative
     */
    public Place {
        if (line < 0 || column < 0) {
            throw new IllegalArgumentException("line and column count from 1 (0: none), not " + line + ":" + column);
        }
    }

    /**
     * The file as a whole.
     *
     * @param file name of the file
     */
    public static Place ofFile(String file) {
        return new Place(file, 0, 0);
    }

    @Override
    public int compareTo(Place other) {
        int order = file.compareTo(other.file);
        if (order == 0) {
            order = Integer.compare(line, other.line);
        }
        return order == 0 ? Integer.compare(column, other.column) : order;
    }

    /** The place as editors write it: {@code bores.csv:12:5}, without the parts that are not known. */
    @Override
    public String toString() {
        if (line == 0) {
            return file;
        }
        return column == 0 ? file + ":" + line : file + ":" + line + ":" + column;
    }
}
