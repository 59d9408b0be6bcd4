package org.headfall.scenarios.results;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.document.FileHash;

/**
 * The hash that {@code summary.json} carries of itself: SHA-256 of its text with zeros in place of the hash. It shows a
 * change made by accident or in an editor; only {@code rerun} shows one that was made with a new hash.
 */
final class SummarySeal {

    /** What stands in the field while the text is hashed. */
    static final String OPEN = "0".repeat(64);

    /** In a text of JSON quotes are escaped, so no title can look like the field. */
    private static final Pattern FIELD = Pattern.compile("(?<=\"ownSha256\" : \")[0-9a-f]{64}(?=\")");

    private SummarySeal() {}

    /** The text with its hash in place of the zeros. */
    static String sealed(String text) {
        return FIELD.matcher(text).replaceFirst(hash(text));
    }

    /** Whether a text is the one that was sealed. */
    static boolean holds(String text) {
        Matcher field = FIELD.matcher(text);
        return field.find() && field.group().equals(hash(field.replaceFirst(OPEN)));
    }

    private static String hash(String text) {
        return FileHash.of(text.getBytes(StandardCharsets.UTF_8));
    }
}
