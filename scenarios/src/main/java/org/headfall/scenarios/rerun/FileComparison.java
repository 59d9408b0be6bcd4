package org.headfall.scenarios.rerun;

import java.util.Optional;

/**
 * A file of a folder of results beside the same file of the run made again.
 *
 * @param file name of the file
 * @param values how many values were compared: numbers, words and dates
 * @param differing how many of them differ
 * @param first the first difference in the order of the file, with its place and both values, or why nothing could be
 *     compared; empty if all is the same
 */
public record FileComparison(String file, long values, long differing, Optional<String> first) {

    /** Whether all values are the same. */
    public boolean same() {
        return first.isEmpty();
    }

    /** A file of which nothing could be compared. */
    static FileComparison notCompared(String file, String why) {
        return new FileComparison(file, 0, 0, Optional.of(why));
    }
}
