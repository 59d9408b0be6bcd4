package org.headfall.validation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.util.stream.Stream;
import org.headfall.validation.check.CaseResult;
import org.headfall.validation.check.CaseResult.Verdict;
import org.headfall.validation.check.ValidationCase;
import org.headfall.validation.command.AllCases;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The cases of {@code headfall validate} as tests: the quick ones in every build, all of them with
 * {@code -Dheadfall.validation=all}, some with {@code -Dheadfall.validation=NAME}, the beginning of their names.
 */
class PublishedWorkTest {

    private static final String WANTED = System.getProperty("headfall.validation", "fast");

    @TestFactory
    Stream<DynamicTest> holds() {
        return AllCases.list().stream()
                .filter(PublishedWorkTest::isWanted)
                .map(validationCase -> DynamicTest.dynamicTest(
                        validationCase.name() + ": " + validationCase.title(), () -> check(validationCase)));
    }

    private static boolean isWanted(ValidationCase validationCase) {
        return switch (WANTED) {
            case "all" -> true;
            case "fast" -> validationCase.pace() == ValidationCase.Pace.FAST;
            default -> validationCase.name().startsWith(WANTED);
        };
    }

    private static void check(ValidationCase validationCase) {
        CaseResult result = validationCase.run();
        assumeFalse(result.verdict() == Verdict.SKIPPED, () -> String.join("; ", result.notes()));
        assertEquals(Verdict.PASSED, result.verdict(), result::explanation);
    }

    /** Names are what a user types, so no two may be alike. */
    @Test
    void namesAreUnique() {
        assertEquals(
                AllCases.list().size(),
                AllCases.list().stream().map(ValidationCase::name).distinct().count());
    }
}
