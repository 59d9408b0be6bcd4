package org.headfall.scenarios.problem;

import org.jspecify.annotations.Nullable;

/**
 * What is wrong with a value, before it is known where the value stands.
 *
 * @param kind what kind of problem it is
 * @param found what was found, shortened and with control characters made visible
 * @param allowed what is allowed instead
 * @param suggestion what was probably meant, or null if nothing is near
 */
public record Finding(
        ProblemKind kind,
        String found,
        String allowed,
        @Nullable String suggestion) {
    private static final int LONGEST_FOUND = 120;

    /** Makes the texts fit for a line of a terminal or a log. */
    public Finding {
        found = printable(found);
        allowed = visible(allowed);
        suggestion = suggestion == null ? null : printable(suggestion);
    }

    /**
     * A finding with nothing to suggest.
     *
     * @param kind what kind of problem it is
     * @param found what was found
     * @param allowed what is allowed instead
     */
    public static Finding of(ProblemKind kind, String found, String allowed) {
        return new Finding(kind, found, allowed, null);
    }

    /**
     * The finding at its place.
     *
     * @param place where the value stands
     * @param subject name of the value, such as a key or a column
     */
    public Problem at(Place place, String subject) {
        return new Problem(place, subject, this);
    }

    static String printable(String text) {
        String shown = visible(text);
        int length = shown.codePointCount(0, shown.length());
        return length <= LONGEST_FOUND
                ? shown
                : shown.substring(0, shown.offsetByCodePoints(0, LONGEST_FOUND - 3)) + "...";
    }

    private static String visible(String text) {
        StringBuilder shown = new StringBuilder(text.length());
        text.codePoints().forEach(point -> {
            if (point == '\n') {
                shown.append("\\n");
            } else if (Character.isISOControl(point)
                    || Character.getType(point) == Character.FORMAT
                    || Character.getType(point) == Character.SURROGATE) {
                shown.append(String.format("\\u%04x", point));
            } else {
                shown.appendCodePoint(point);
            }
        });
        return shown.toString();
    }
}
