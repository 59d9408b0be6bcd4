package org.headfall.scenarios.rerun;

import java.util.Optional;

/**
 * A file of a folder of results beside the same file of the run made again.
 *
 * @param file name of the file
 * @param values how many values were compared: numbers, words and dates
 * @param rounded how many numbers among them differ by rounding alone, by 1e-9 of themselves or of their unit at most
 * @param differing how many values differ by more
 * @param first the first of these differences in the order of the file, with its place and both values, or why nothing could be
 *     compared; empty if there is none
 */
public record FileComparison(String file, long values, long rounded, long differing, Optional<String> first) {

    /** Whether all values are the same, but for rounding. */
    public boolean same() {
        return first.isEmpty();
    }

    /** A file of which nothing could be compared. */
    static FileComparison notCompared(String file, String why) {
        return new FileComparison(file, 0, 0, 0, Optional.of(why));
    }
}
