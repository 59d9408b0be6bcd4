package org.headfall.scenarios.reading;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.jspecify.annotations.Nullable;

/** Names that may be used only once. */
final class NameRegister {
    private static final int LONGEST = 100;

    private final Map<String, Place> places = new LinkedHashMap<>();
    private final Problems problems;

    NameRegister(Problems problems) {
        this.problems = problems;
    }

    /** Takes a name, and reports it if it is taken already or too long. */
    void add(String name, Place place, String subject) {
        if (name.length() > LONGEST) {
            problems.add(
                    place, subject, Finding.of(ProblemKind.OUT_OF_RANGE, name, "at most " + LONGEST + " characters"));
        }
        @Nullable Place first = places.putIfAbsent(name, place);
        if (first != null) {
            problems.add(
                    place,
                    subject,
                    Finding.of(ProblemKind.DUPLICATE_NAME, name + ", first at " + first, "each name once"));
        }
    }

    Set<String> names() {
        return places.keySet();
    }
}
