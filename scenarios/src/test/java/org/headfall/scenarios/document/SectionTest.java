package org.headfall.scenarios.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.junit.jupiter.api.Test;

class SectionTest {
    private final Problems problems = new Problems();

    private Section section(String yaml) {
        DocumentNode node = new DocumentParser("a.yaml", problems).parse(yaml);
        assertNotNull(node);
        Section section = Section.of(node, "", problems);
        assertNotNull(section);
        return section;
    }

    @Test
    void readsEachTypeOfValue() {
        Section section = section("t: 'a: b'\nq: 2 km\nd: 2028-02-29\nc: east\ns: {x: 1 m}\nl: [1, 2]\n");
        assertEquals("a: b", section.text("t"));
        assertEquals(
                2000,
                section.quantity("q", Dimension.LENGTH, AllowedRange.POSITIVE).value());
        assertEquals(LocalDate.of(2028, 2, 29), section.date("d"));
        assertEquals(1, section.choice("c", Map.of("east", 1, "west", 2)));
        assertEquals(2, section.optionalList("l").size());
        Section inner = section.section("s");
        assertEquals("s.x", inner.nameOf("x"));
        assertEquals(1, inner.quantity("x", Dimension.LENGTH, AllowedRange.ANY).value());
        inner.done();
        section.done();
        assertTrue(problems.isEmpty(), problems::toText);
    }

    @Test
    void absentOptionalKeysAreNullWithoutAProblem() {
        Section section = section("a: 1\n");
        assertNull(section.optionalText("b"));
        assertNull(section.optionalDate("c"));
        assertNull(section.optionalQuantity("d", Dimension.LENGTH, AllowedRange.ANY));
        assertNull(section.optionalSection("e"));
        assertTrue(section.optionalList("f").isEmpty());
        assertTrue(problems.isEmpty());
    }

    @Test
    void everyProblemOfASectionIsFoundInOneReading() {
        Section section = section("q: -3 m\nd: 2027-02-29\nc: aest\ns: 5\nl: 6\nt:\nstrange: 1\ntitel: x\n");
        assertNull(section.quantity("q", Dimension.LENGTH, AllowedRange.POSITIVE));
        assertNull(section.date("d"));
        assertNull(section.choice("c", Map.of("east", 1)));
        assertNull(section.section("s"));
        assertTrue(section.optionalList("l").isEmpty());
        assertNull(section.text("t"));
        assertNull(section.text("title"));
        section.done();
        assertEquals(
                List.of(
                        "a.yaml:1:1 MISSING_KEY",
                        "a.yaml:1:4 OUT_OF_RANGE",
                        "a.yaml:2:4 NOT_A_DATE",
                        "a.yaml:3:4 NOT_A_CHOICE",
                        "a.yaml:4:4 WRONG_TYPE",
                        "a.yaml:5:4 WRONG_TYPE",
                        "a.yaml:6:3 EMPTY_VALUE",
                        "a.yaml:7:1 UNKNOWN_KEY",
                        "a.yaml:8:1 UNKNOWN_KEY"),
                problems.sorted().stream().map(p -> p.place() + " " + p.kind()).toList());
    }

    /** Whether the section within was read or is not even there. */
    @Test
    void aKeyThatASectionWithinKnowsIsSentThere() {
        Section section = section("grid: {growth: 1.2, refine: {down_to: 100 m}, height: 1}\n")
                .section("grid");
        Section refine = section.optionalSection("refine");
        refine.optionalText("down_to");
        refine.optionalText("growth");
        refine.done();
        section.optionalSection("extent");
        section.knowsWithin("extent", Set.of("height"));
        section.done();
        assertEquals(
                List.of(
                        "a.yaml:1:8: growth is not a key of grid; keys are refine, extent; growth belongs in grid.refine",
                        "a.yaml:1:47: height is not a key of grid; keys are refine, extent; height belongs in grid.extent"),
                problems.sorted().stream().map(Object::toString).toList());
    }

    @Test
    void unknownKeysAndChoicesComeWithTheNearestAllowedOne() {
        Section section = section("titel: x\nside: est\n");
        section.optionalText("title");
        section.choice("side", Map.of("east", 1));
        section.done();
        assertEquals("title", problems.sorted().get(0).finding().suggestion());
        assertEquals("east", problems.sorted().get(1).finding().suggestion());
    }

    @Test
    void aValueWhereASectionIsExpectedIsReported() {
        DocumentNode node = new DocumentParser("a.yaml", problems).parse("just text");
        assertNull(Section.of(node, "", problems));
        assertEquals(ProblemKind.WRONG_TYPE, problems.sorted().get(0).kind());
    }

    @Test
    void datesHaveFourTwoAndTwoDigits() {
        for (String wrong :
                List.of("1/7/2026", "2026-7-1", "2026-13-01", "26-07-01", "+12026-07-01", "2026-07-01T00:00")) {
            assertNull(ValueReader.parseDate(wrong), wrong);
        }
    }
}
