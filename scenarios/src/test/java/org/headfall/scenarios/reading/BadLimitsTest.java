package org.headfall.scenarios.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.Notice;
import org.headfall.scenarios.problem.Problem;
import org.headfall.scenarios.problem.ProblemKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Limits, cases and meter readings with mistakes that are easily made: each is one problem, and all are told at once. */
class BadLimitsTest {

    private static final String HEAD = """
            title: Mistakes
            datum: an invented datum
            crs: local
            period: {from: 2026-07-01, for: 20 yr}
            grid: {extent: {west: 0 km, east: 20 km, south: 0 km, north: 20 km}, cell: 1 km}
            aquifer: {transmissivity: 200 m2/d, storativity: 2e-4, top: -50 m, bottom: -150 m}
            ground: 100 m
            boundaries: [{name: west, side: west, fixed_head: 120 m}]
            protected: [{name: well, at: [10 km, 12 km]}]
            bores:
              - {name: old, at: [8 km, 8 km], group: existing, screen_radius: 0.1 m, rate: 5 L/s}
              - {name: new, at: [12 km, 8 km], group: GROUP, screen_radius: 0.1 m, rate: 10 L/s}
            start: {steady: with existing bores}
            output: {report_after: [2 yr]}
            """;

    /** Line of the first limit. */
    private static final int FIRST = 16;

    @TempDir
    private Path folder;

    private List<Problem> problems(String group, String more) throws IOException {
        Path document = Files.writeString(folder.resolve("mistakes.yaml"), HEAD.replace("GROUP", group) + more);
        ScenarioReading reading = ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT);
        return assertThrows(InputException.class, reading::orThrow).problems();
    }

    /** A limit, and the one problem that it is. */
    private record Mistake(String limit, ProblemKind kind, String found, String allowed) {}

    private static final List<Mistake> MISTAKES = List.of(
            new Mistake(
                    "name: a, quantity: drawdown, at: nowhere, cause: everyone, when: ever, at_most: 5 m",
                    ProblemKind.UNKNOWN_NAME,
                    "nowhere",
                    "the name of a bore"),
            new Mistake(
                    "name: b, quantity: drawdown, at: well, cause: everyone, when: within 0 yr, at_most: 5 m",
                    ProblemKind.OUT_OF_RANGE,
                    "0 yr",
                    "more than 0 yr and at most 1000 yr"),
            new Mistake(
                    "name: c, quantity: drawdown, at: well, cause: everyone, when: within 30 yr, at_most: 5 m",
                    ProblemKind.OUT_OF_RANGE,
                    "30 yr, which is 2056-07-01",
                    "2046-07-01"),
            new Mistake(
                    "name: d, quantity: drawdown, at: well, cause: everyone, when: ever, at_most: 5 kPa",
                    ProblemKind.WRONG_UNIT,
                    "5 kPa",
                    "a length"),
            new Mistake(
                    "name: e, quantity: drawdown, at: well, cause: everyone, when: ever, at_least: 5 m",
                    ProblemKind.CONFLICTING_KEYS,
                    "at_least",
                    "at_most"),
            new Mistake(
                    "name: f, quantity: drawdwon, at: well, cause: everyone, when: ever, at_most: 5 m",
                    ProblemKind.NOT_A_CHOICE,
                    "drawdwon",
                    "drawdown"),
            new Mistake(
                    "name: a, quantity: drawdown, at: well, cause: everyone, when: ever, at_most: 5 m",
                    ProblemKind.DUPLICATE_NAME,
                    "a, first at mistakes.yaml:" + FIRST,
                    "each name once"),
            new Mistake(
                    "name: g, quantity: share of available head, at: well, when: ever, at_least: 150 %",
                    ProblemKind.OUT_OF_RANGE, "150 %", "at least 0 % and at most 100 %"),
            new Mistake(
                    "name: h, quantity: drawdown, at: well, cause: everyone, when: ever, at_most: 1e300 m",
                    ProblemKind.OUT_OF_RANGE,
                    "1e300 m",
                    "at most 10000 m"),
            new Mistake(
                    "name: i, quantity: drawdown, at: well, cause: everyone, when: ever, at_most: .nan m",
                    ProblemKind.NOT_A_NUMBER,
                    ".nan m",
                    "a length"),
            new Mistake(
                    "name: j, quantity: drawdown, at: well, cause: everyone, compared_with: existing as used, when: ever,"
                            + " at_most: 5 m",
                    ProblemKind.NOT_A_CHOICE,
                    "existing as used",
                    "the name of another case if the document has cases"),
            new Mistake(
                    "name: k, quantity: drawdown, at: well, cause: everyone, compared_with: 2150-07-01, when: ever,"
                            + " at_most: 5 m",
                    ProblemKind.OUT_OF_RANGE,
                    "2150-07-01",
                    "dates from 2026-07-01 to 2046-07-01"),
            new Mistake(
                    "name: l, quantity: drawdown, at: [well, old, well], cause: everyone, when: ever, at_most: 5 m",
                    ProblemKind.DUPLICATE_NAME,
                    "well",
                    "each place once"),
            new Mistake(
                    "name: m, quantity: share of available head, above: pump intake, at: old, cause: everyone,"
                            + " compared_with: before any taking, when: ever, at_least: 50 %",
                    ProblemKind.NOT_A_CHOICE, "above a level that 'old' does not have", "bores with pump_intake_level"),
            new Mistake(
                    "name: n, quantity: share of available head, above: outlet, at: all bores, cause: everyone,"
                            + " compared_with: before any taking, when: ever, at_least: 50 %",
                    ProblemKind.NOT_A_CHOICE, "above a level that no bore has", "bores with outlet_level"),
            new Mistake(
                    "name: o, quantity: distance, at: well, cause: everyone, at_least: 2 km, at_most: 5 km",
                    ProblemKind.CONFLICTING_KEYS,
                    "at_most",
                    "at_least"),
            new Mistake(
                    "name: p, quantity: distance, at: well, cause: everyone, when: within 5 yr, at_least: 2 km",
                    ProblemKind.CONFLICTING_KEYS,
                    "when",
                    "a limit of distance without it"),
            new Mistake(
                    "name: q, quantity: drawdown, at: well, cause: everyone, compared_with: 2046-07-01, when: ever,"
                            + " at_most: 5 m",
                    ProblemKind.OUT_OF_RANGE,
                    "an end on 2046-07-01",
                    "an end after 2046-07-01"),
            new Mistake(
                    "name: r, quantity: distance, at: well, cause: everyone, at_least: 1e7 m",
                    ProblemKind.OUT_OF_RANGE,
                    "1e7 m",
                    "at most 1000000 m"));

    @Test
    void everyMistakeIsOneProblemInItsLine() throws IOException {
        StringBuilder limits = new StringBuilder("limits:\n");
        MISTAKES.forEach(
                mistake -> limits.append("  - {").append(mistake.limit()).append("}\n"));
        List<Problem> problems = problems("proposed", limits.toString());
        assertEquals(MISTAKES.size(), problems.size(), problems::toString);
        for (int i = 0; i < MISTAKES.size(); i++) {
            Mistake mistake = MISTAKES.get(i);
            Problem problem = problems.get(i);
            assertEquals(FIRST + i, problem.place().line(), problem::toString);
            assertTrue(problem.place().column() > 1, problem::toString);
            assertEquals(mistake.kind(), problem.kind(), problem::toString);
            assertTrue(problem.finding().found().contains(mistake.found()), problem::toString);
            assertTrue(problem.finding().allowed().contains(mistake.allowed()), problem::toString);
        }
    }

    /** Such a bore would hide the group that limits mean by the words, and such a holder or class would be hidden by it. */
    @Test
    void nothingIsCalledLikeAGroup() throws IOException {
        Files.writeString(folder.resolve("more.csv"), """
                name,x (m),y (m),group,screen_radius (m),holder,rate (L/s)
                everyone,4000,4000,existing,0.1,Existing bores,1
                """);
        Path document = Files.writeString(
                folder.resolve("mistakes.yaml"),
                HEAD.replace("GROUP", "proposed, holder: everyone, class: proposed bores")
                        .replace("name: old", "name: all bores")
                        .replace("name: well", "name: every cell")
                        .replace("start:", "  - {file: more.csv}\nstart:"));
        List<Problem> problems = assertThrows(
                        InputException.class,
                        () -> ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT)
                                .orThrow())
                .problems();
        assertEquals(
                List.of(
                        "mistakes.yaml:9",
                        "mistakes.yaml:11",
                        "mistakes.yaml:12",
                        "mistakes.yaml:12",
                        "more.csv:2",
                        "more.csv:2"),
                problems.stream()
                        .map(problem ->
                                problem.place().file() + ":" + problem.place().line())
                        .toList(),
                problems::toString);
        problems.forEach(problem -> assertEquals(ProblemKind.DUPLICATE_NAME, problem.kind(), problem::toString));
    }

    /** What is allowed but hardly meant is said with its place: no limit would ever show it. */
    @Test
    void whatNoLimitCanShowIsNoted() throws IOException, InputException {
        Files.writeString(folder.resolve("heads.csv"), """
                name,date,head (m)
                well,2026-07-01,118
                well,2020-07-01,119
                """);
        Path document = Files.writeString(
                folder.resolve("notes.yaml"),
                HEAD.replace("GROUP", "proposed, from: 2046-07-01").replace("rate: 5 L/s", "rate: -30 ML/yr")
                        + "measurements: {file: heads.csv}\n");
        ScenarioReading reading = ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT);
        reading.orThrow();
        assertEquals(
                List.of(
                        "heads.csv:3:6: heads measured before 2026-07-01 or after 2046-07-01 are compared with nothing: 1 of 2",
                        "notes.yaml:11:5: bore old has a negative rate, so that it puts water into the aquifer",
                        "notes.yaml:12:5: bore new begins on 2046-07-01, when the period is over (2046-07-01): no limit can"
                                + " show what it does"),
                reading.problems().notices().stream().map(Notice::toString).toList());
    }

    @Test
    void aPlaceHasOneHeadADay() throws IOException {
        Files.writeString(folder.resolve("heads.csv"), """
                name,date,head (m)
                well,2026-07-01,118
                old,2026-07-01,117
                well,2026-07-01,119
                """);
        List<Problem> problems = problems("proposed", "measurements: {file: heads.csv}\n");
        assertEquals(1, problems.size(), problems::toString);
        assertEquals(4, problems.get(0).place().line());
        assertEquals(ProblemKind.DUPLICATE_NAME, problems.get(0).kind());
    }

    @Test
    void withoutAProposalNothingCanAskForOne() throws IOException {
        List<Problem> problems = problems("existing", """
                limits:
                  - {name: a, quantity: drawdown, at: well, cause: proposed bores, when: ever, at_most: 5 m}
                  - {name: b, quantity: drawdown, at: proposed bores, cause: everyone, when: ever, at_most: 5 m}
                cases: [existing as used, with the proposal]
                """);
        assertEquals(3, problems.size(), problems::toString);
        for (Problem problem : problems) {
            assertTrue(problem.finding().found().contains("no bore is proposed"), problem::toString);
        }
    }

    /** Saved by a program that ends lines with CR and LF, with a mistake in each row but the first and last. */
    @Test
    void meterReadingsAreLookedAtRowByRow() throws IOException {
        String meters = """
                name,date,reading (ML)
                old,2026-07-01,50
                nobody,2026-07-01,5
                old,2027-07-01,49.5
                new,2027-13-01,4
                new,2028-07-01,nan
                new,2028-07-01,1e300
                new,2028-07-01,
                old,2030-07-01,90
                old,2130-07-01,95
                old,2930-07-01,96
                """;
        Files.write(folder.resolve("meters.csv"), meters.replace("\n", "\r\n").getBytes(StandardCharsets.UTF_8));
        List<Problem> problems = problems("proposed", "accounts: {water_year: 1 July, meters: meters.csv}\n");
        assertEquals(
                List.of(3, 4, 5, 6, 7, 8, 11),
                problems.stream().map(problem -> problem.place().line()).toList(),
                problems::toString);
        assertEquals("49.5 ML after 50 ML", problems.get(1).finding().found());
    }
}
