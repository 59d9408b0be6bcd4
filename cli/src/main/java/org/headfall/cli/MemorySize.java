package org.headfall.cli;

import java.util.Locale;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Sizes of memory as Java's own options write them: 800m, 16g. */
final class MemorySize {

    private static final Pattern SIZE = Pattern.compile("(\\d{1,9})([kmg])b?");
    private static final long KIBI = 1024;

    private MemorySize() {}

    /** The size (bytes), if the text is one of more than nothing. */
    static OptionalLong parse(String text) {
        Matcher matcher = SIZE.matcher(text.strip().toLowerCase(Locale.ROOT));
        if (!matcher.matches()) {
            return OptionalLong.empty();
        }
        long unit = switch (matcher.group(2)) {
            case "k" -> KIBI;
            case "m" -> KIBI * KIBI;
            default -> KIBI * KIBI * KIBI;
        };
        long size = Long.parseLong(matcher.group(1)) * unit;
        return size > 0 ? OptionalLong.of(size) : OptionalLong.empty();
    }

    /** A size as an option would give it, in mebibytes, rounded up. */
    static String words(long bytes) {
        return (bytes + KIBI * KIBI - 1) / (KIBI * KIBI) + "m";
    }
}
