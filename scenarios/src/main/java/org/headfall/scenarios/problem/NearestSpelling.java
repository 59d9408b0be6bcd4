package org.headfall.scenarios.problem;

import java.util.Collection;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The allowed word nearest to a word somebody typed, by the number of letters to insert, delete, replace or swap with
 * the neighbour (optimal string alignment distance: F. J. Damerau 1964, Communications of the ACM 7(3), 171-176).
 * A difference only in capitals, or between a space, a hyphen and an underscore, counts as no difference.
 */
public final class NearestSpelling {
    private static final int LONGEST_COMPARED = 60;

    private NearestSpelling() {}

    /**
     * The nearest of the allowed words, or null if none is near: more than one change for every three letters, and at
     * least one letter that stays.
     *
     * @param typed what was typed
     * @param allowed the words that are allowed
     */
    public static @Nullable String of(String typed, Collection<String> allowed) {
        String wanted = plain(typed);
        if (wanted.isEmpty() || wanted.length() > LONGEST_COMPARED) {
            return null;
        }
        @Nullable String nearest = null;
        int fewest = Integer.MAX_VALUE;
        for (String word : allowed) {
            String candidate = plain(word);
            int changes = distance(wanted, candidate);
            int longer = Math.max(wanted.length(), candidate.length());
            if (changes < fewest && changes <= Math.max(1, longer / 3) && changes < longer) {
                nearest = word;
                fewest = changes;
            }
        }
        return nearest;
    }

    private static String plain(String word) {
        return word.strip().toLowerCase(Locale.ROOT).replace('-', '_').replace(' ', '_');
    }

    /** Changes that turn one word into the other. */
    static int distance(String a, String b) {
        int[][] changes = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                changes[i][j] = i == 0 || j == 0 ? i + j : fewest(changes, a, b, i, j);
            }
        }
        return changes[a.length()][b.length()];
    }

    private static int fewest(int[][] changes, String a, String b, int i, int j) {
        int replace = changes[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        int best = Math.min(replace, Math.min(changes[i - 1][j], changes[i][j - 1]) + 1);
        boolean swapped = i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
        return swapped ? Math.min(best, changes[i - 2][j - 2] + 1) : best;
    }
}
