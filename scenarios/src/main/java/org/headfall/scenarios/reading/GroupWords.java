package org.headfall.scenarios.reading;

import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;

/**
 * Words by which limits mean groups of bores or all places. A bore, holder or class of one of these names would hide the
 * group, or be hidden by it, without a word.
 */
final class GroupWords {
    private static final List<String> WORDS =
            List.of("all bores", "existing bores", "proposed bores", "every cell", "everyone");
    private static final String BORES_OF = "bores of ";

    private GroupWords() {}

    /** Reports a name that limits could not tell from a group. */
    static void requireOther(String name, Place place, String subject, Problems problems) {
        String plain = name.strip().toLowerCase(Locale.ROOT);
        if (WORDS.contains(plain) || plain.startsWith(BORES_OF)) {
            problems.add(
                    place,
                    subject,
                    Finding.of(
                            ProblemKind.DUPLICATE_NAME,
                            name + ", by which limits mean a group",
                            "names other than " + String.join(", ", WORDS) + " and those that begin with " + BORES_OF));
        }
    }
}
