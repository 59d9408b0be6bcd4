package org.headfall.scenarios.vector;

import java.util.List;

/** The value of a member {@code coordinates} before it is known what shape it belongs to. */
sealed interface Coordinates {
    /** Where it begins. */
    TextPosition position();

    /** What it is, in words. */
    String shown();

    /** One pair of numbers; a height is left out. */
    record Pair(double x, double y, TextPosition position) implements Coordinates {
        @Override
        public String shown() {
            return "the coordinates " + CoordinateWords.of(x, y);
        }
    }

    /** A list of pairs or of lists. */
    record Listing(List<Coordinates> entries, TextPosition position) implements Coordinates {
        @Override
        public String shown() {
            return entries.isEmpty() ? "an empty list" : "a list of " + entries.size();
        }
    }
}
