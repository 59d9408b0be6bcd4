package org.headfall.cli;

import java.util.Optional;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.reading.ScenarioReading;

/** The section of a document that a command needs beside the scenario itself. */
final class PlanningSection {

    private PlanningSection() {}

    /**
     * The section.
     *
     * @throws InputException if the document has none
     */
    static <T> T require(ScenarioReading reading, String key, Optional<T> section) throws InputException {
        if (section.isEmpty()) {
            refuse(
                    reading,
                    key,
                    Finding.of(
                            ProblemKind.MISSING_KEY,
                            "a document without it",
                            "the section " + key + ", which asks what this command answers; README.md has its keys"));
        }
        return section.orElseThrow();
    }

    /** Reports what is wrong with the section as a whole. */
    static void refuse(ScenarioReading reading, String key, Finding finding) throws InputException {
        reading.problems()
                .add(Place.ofFile(reading.folder().nameOf(reading.folder().document())), key, finding);
        reading.problems().throwIfAny();
    }
}
