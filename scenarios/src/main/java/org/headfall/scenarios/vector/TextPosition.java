package org.headfall.scenarios.vector;

/**
 * A place in a text file.
 *
 * @param line line, from 1; 0 if there is no file
 * @param column column, from 1; 0 if there is no file
 */
public record TextPosition(int line, int column) {
    /** The place of something that was not read from a file. */
    public static final TextPosition NONE = new TextPosition(0, 0);
}
