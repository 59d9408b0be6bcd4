package org.headfall.scenarios.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ProblemsTest {
    @Test
    void sortsByFileLineAndColumn() {
        Problems problems = new Problems();
        problems.add(new Place("b.csv", 2, 1), "late", Finding.of(ProblemKind.SYNTAX, "x", "y"));
        problems.add(new Place("a.yaml", 10, 2), "third", Finding.of(ProblemKind.SYNTAX, "x", "y"));
        problems.add(new Place("a.yaml", 9, 7), "second", Finding.of(ProblemKind.SYNTAX, "x", "y"));
        problems.add(new Place("a.yaml", 9, 3), "first", Finding.of(ProblemKind.SYNTAX, "x", "y"));
        assertEquals(
                List.of("first", "second", "third", "late"),
                problems.sorted().stream().map(Problem::subject).toList());
    }

    @Test
    void aLineNamesPlaceFoundAllowedAndSuggestion() {
        Finding finding = new Finding(ProblemKind.UNKNOWN_KEY, "titel", "title, datum", "title");
        assertEquals(
                "town.yaml:3:1: titel is not a key of the document; keys are title, datum; did you mean title?",
                finding.at(new Place("town.yaml", 3, 1), "titel").toString());
        assertEquals(
                "town.yaml:9:3: titel is not a key of plan.map; keys are title, datum; did you mean title?",
                finding.at(new Place("town.yaml", 9, 3), "plan.map.titel").toString());
        assertEquals(
                "town.yaml:3:1: siting.efficiency is missing: found nothing under this name; needed: the key efficiency",
                Finding.of(ProblemKind.MISSING_KEY, "nothing under this name", "the key efficiency")
                        .at(new Place("town.yaml", 3, 1), "siting.efficiency")
                        .toString());
    }

    @Test
    void countsWhatItDoesNotListAndKeepsOtherKinds() {
        Problems problems = new Problems();
        for (int line = 1; line <= 1_000_000; line++) {
            problems.add(new Place("a.csv", line, 1), "x", Finding.of(ProblemKind.NOT_A_NUMBER, "q", "a number"));
        }
        problems.add(new Place("a.csv", 7, 9), "y", Finding.of(ProblemKind.EMPTY_VALUE, "nothing", "a value"));
        List<Problem> sorted = problems.sorted();
        assertEquals(1_000_001, problems.count());
        assertEquals(22, sorted.size());
        Problem last = sorted.get(21);
        assertEquals(ProblemKind.MORE_OF_THE_SAME, last.kind());
        assertTrue(last.finding().found().contains("999980"), last::toString);
    }

    @Test
    void controlCharactersAndLongTextsNeverReachTheTerminal() {
        Finding finding = Finding.of(ProblemKind.SYNTAX, "\u001b[31mred\n" + "x".repeat(10_000), "plain text");
        String line = finding.at(new Place("a", 1, 1), "k\u0007").toString();
        assertFalse(line.contains("\u001b") || line.contains("\n") || line.contains("\u0007"), line);
        assertTrue(line.length() < 300, line);
    }

    @Test
    void throwsAllProblemsAtOnce() {
        Problems problems = new Problems();
        problems.add(new Place("a", 2, 1), "two", Finding.of(ProblemKind.SYNTAX, "x", "y"));
        problems.add(new Place("a", 1, 1), "one", Finding.of(ProblemKind.SYNTAX, "x", "y"));
        InputException thrown = assertThrows(InputException.class, problems::throwIfAny);
        assertEquals(problems.sorted(), thrown.problems());
        assertTrue(thrown.getMessage().startsWith("a:1:1: one"), thrown::getMessage);
    }

    @Test
    void nearestSpellingFindsSlipsAndRejectsStrangers() {
        Set<String> allowed = Set.of("transmissivity", "storativity", "top", "bottom", "head_above");
        assertEquals("transmissivity", NearestSpelling.of("transmisivity", allowed));
        assertEquals("storativity", NearestSpelling.of("Storativty", allowed));
        assertEquals("head_above", NearestSpelling.of("head-above", allowed));
        assertEquals("top", NearestSpelling.of("tpo", allowed));
        assertNull(NearestSpelling.of("colour", allowed));
        assertNull(NearestSpelling.of("x".repeat(100_000), allowed));
    }

    @Test
    void distanceCountsInsertDeleteReplaceAndSwap() {
        assertEquals(0, NearestSpelling.distance("bore", "bore"));
        assertEquals(1, NearestSpelling.distance("bore", "bores"));
        assertEquals(1, NearestSpelling.distance("bore", "boer"));
        assertEquals(3, NearestSpelling.distance("kitten", "sitting"));
        assertEquals(4, NearestSpelling.distance("", "bore"));
    }
}
