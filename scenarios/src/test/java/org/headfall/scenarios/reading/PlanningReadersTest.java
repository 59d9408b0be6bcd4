package org.headfall.scenarios.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.MonthDay;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.Problem;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.scenario.Season;
import org.headfall.scenarios.scenario.StatedRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sections {@code siting}, {@code allocation} and {@code spacing}, by a built-in example with one thing changed. */
class PlanningReadersTest {

    private static final Path EXAMPLE = Path.of("examples", "corella");

    @TempDir
    private Path folder;

    private ScenarioReading reading(String found, String replacement) throws IOException {
        for (String file : List.of("pumping-tests.csv", "reserve.geojson")) {
            Files.copy(EXAMPLE.resolve(file), folder.resolve(file));
        }
        String text = Files.readString(EXAMPLE.resolve("scenario.yaml"));
        assertTrue(text.contains(found), found);
        Path document = Files.writeString(folder.resolve("scenario.yaml"), text.replace(found, replacement));
        return ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT);
    }

    /** What was written comes back in messages as it was written, with its unit. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                  rate: 8 L/s             |   rate: 1.5 GL/yr                  | siting.rate               | 1.5 GL/yr | largest_rate, 40 L/s
                {up_to: 50 ML/yr, at_least | {up_to: 9 L/s, at_least: 1 km}, {up_to: 50 ML/yr, at_least | up_to | 50 ML/yr | more than the one before
                  sites: 3                |   sites: 2.5                       | siting.sites              | 2.5       | whole
                  sites: 3                |   for: 300 mm                      | siting.for                | 300 mm    | time
                  sites: 3                |   for: 21 yr                       | siting.for                | 21 yr     | 2047-07-01
                rates_change_after: 10 yr | rates_change_after: 18 d           | rates_change_after        | 18 d      | whole years
                from: 50 m, to: 5 km      | from: 7 km, to: 5 km               | spacings.to               | 5 km      | from, 7 km
                rates_change_after: 10 yr | rates_change_after: 10 yr\\n  for: 21 yr | allocation.for     | 21 yr     | 2047-07-01
                at_least: 8 L/s}          | at_least: 80 L/s}                  | at_least                  | 80 L/s    | at most 60.00 L/s, largest_rate of the 2 bores
                at_least: 8 L/s}          | at_least: 2000 ML/yr}              | at_least                  | 2000 ML/yr | at most 1893.46 ML/yr
                {holder: Corella town, at_least: 8 L/s} | {holder: Wirra Downs, at_least: 8 L/s} | holder     | Wirra Downs, none of whose bores share | Town 1, Town 2
                bores: [2, 4, 6]          | bores: [2, 4.5]                    | spacing.bores             | 4.5       | whole
                """)
    void messagesKeepTheUnitsOfTheDocument(
            String found, String replacement, String subject, String said, String allowed) throws IOException {
        List<Problem> problems =
                reading(found, replacement.replace("\\n", "\n")).problems().sorted();
        assertEquals(1, problems.size(), problems::toString);
        Problem problem = problems.get(0);
        assertTrue(problem.subject().endsWith(subject), problem::toString);
        assertEquals(said, problem.finding().found(), problem::toString);
        assertTrue(problem.finding().allowed().contains(allowed), problem::toString);
    }

    /** Which of two minimums would hold is not guessed: both places are named. */
    @Test
    void aSecondMinimumOfAHolderIsRefusedWithThePlaceOfTheFirst() throws IOException {
        List<Problem> problems = reading(
                        "    - {holder: Corella town, at_least: 8 L/s}\n",
                        "    - {holder: Corella town, at_least: 8 L/s}\n    - {holder: Corella town, at_least: 9 L/s}\n")
                .problems()
                .sorted();
        assertEquals(1, problems.size(), problems::toString);
        Problem problem = problems.get(0);
        assertEquals(ProblemKind.DUPLICATE_NAME, problem.kind());
        List<String> lines = Files.readAllLines(folder.resolve("scenario.yaml"));
        int first = lines.indexOf("    - {holder: Corella town, at_least: 8 L/s}") + 1;
        assertEquals(first + 1, problem.place().line());
        assertTrue(problem.finding().found().contains("scenario.yaml:" + first + ":"), problem::toString);
    }

    /** A holder who comes first cannot come second too, and a bore shares once. */
    @ParameterizedTest
    @CsvSource({"seniority, Corella town", "bores, Town 1"})
    void aNameGivenTwiceIsRefusedWithThePlaceOfTheFirst(String key, String name) throws IOException {
        String line = "  " + key + ": [" + name + ", " + name + "]";
        List<Problem> problems = reading("  largest_rate: 30 L/s\n", "  largest_rate: 30 L/s\n" + line + "\n")
                .problems()
                .sorted();
        assertEquals(1, problems.size(), problems::toString);
        Problem problem = problems.get(0);
        assertEquals(ProblemKind.DUPLICATE_NAME, problem.kind());
        int row = Files.readAllLines(folder.resolve("scenario.yaml")).indexOf(line) + 1;
        assertEquals(row, problem.place().line());
        assertEquals(line.lastIndexOf(name) + 1, problem.place().column());
        assertEquals(
                name + ", first at scenario.yaml:" + row + ":" + (line.indexOf(name) + 1),
                problem.finding().found());
    }

    @ParameterizedTest
    @CsvSource({"21 yr, '', 2047-07-01, 1", "6 yr, for: 5 yr, 2032-07-01, 1", "20 yr, '', , 0"})
    void ratesThatNeverChangeAreRemarkedOn(String change, String taking, String until, int remarks) throws IOException {
        ScenarioReading reading =
                reading("rates_change_after: 10 yr", "rates_change_after: " + change + "\n  " + taking);
        assertTrue(reading.problems().isEmpty());
        assertEquals(remarks, reading.problems().notices().size());
        if (remarks > 0) {
            String notice = reading.problems().notices().get(0).toString();
            assertTrue(
                    notice.contains(
                            "rates never change: bores that share take until " + until + ", not longer than " + change),
                    notice);
        }
    }

    /** Two bores of 30 L/s give no 200 L/s, and a total of 5 L/s at most leaves no minimum of 8 L/s. */
    @ParameterizedTest
    @CsvSource({"least energy, 200 L/s, 'at most 60.00 L/s'", "largest yield, 5 L/s, 'at least 8.00 L/s'"})
    void aTotalThatCannotBeHadIsRefusedAtItsPlace(String goal, String total, String allowed) throws IOException {
        String section = Files.readString(EXAMPLE.resolve("scenario.yaml"));
        String seasons = section.substring(section.indexOf("  seasons:\n"), section.indexOf("  rates_change_after"));
        String before = "goal: largest yield\n  largest_rate: 30 L/s\n";
        List<Problem> problems = reading(
                        before + seasons, "goal: " + goal + "\n  largest_rate: 30 L/s\n  total: " + total + "\n")
                .problems()
                .sorted();
        assertEquals(1, problems.size(), problems::toString);
        Problem problem = problems.get(0);
        assertEquals("allocation.total", problem.subject());
        assertEquals(total, problem.finding().found());
        assertTrue(problem.finding().allowed().contains(allowed), problem::toString);
        String line = Files.readAllLines(folder.resolve("scenario.yaml"))
                .get(problem.place().line() - 1);
        assertTrue(line.contains("total: " + total), line);
    }

    @Test
    void aHolderOfNoBoreIsRefusedWithThoseThereAre() throws IOException {
        List<Problem> problems = reading("  sites: 3\n  holder: Corella town", "  sites: 3\n  holder: Corela town")
                .problems()
                .sorted();
        assertEquals(1, problems.size(), problems::toString);
        Problem problem = problems.get(0);
        assertEquals(ProblemKind.UNKNOWN_NAME, problem.kind());
        assertEquals("siting.holder", problem.subject());
        assertEquals("Corela town", problem.finding().found());
        assertTrue(problem.finding().allowed().contains("Corella town, Wirra Downs"), problem::toString);
        assertEquals("Corella town", problem.finding().suggestion());
    }

    @Test
    void aMinimumIsSpokenOfInItsUnit() throws Exception {
        ScenarioReading reading = reading("at_least: 8 L/s}", "at_least: 36.525 ML/yr}");
        StatedRate minimum = reading.orThrow()
                .planning()
                .allocation()
                .orElseThrow()
                .minimums()
                .get(0)
                .rate();
        assertEquals(100, minimum.value(), 1e-9);
        assertEquals("ML/yr", minimum.unit());
        assertEquals(0.36525, minimum.ofOne(), 1e-9);
    }

    @Test
    void daysInNoSeasonAreRemarkedOnce() throws IOException {
        ScenarioReading reading = reading("{from: 1 April, to: 30 September}", "{from: 15 May, to: 30 September}");
        assertTrue(reading.problems().isEmpty());
        assertEquals(1, reading.problems().notices().size());
        String notice = reading.problems().notices().get(0).toString();
        assertTrue(notice.contains("nothing on days in no season: 1 April to 14 May"), notice);
    }

    @Test
    void seasonsOfAllDaysAreNotRemarkedOn() throws IOException {
        assertEquals(List.of(), reading("output:", "output:").problems().notices());
    }

    /** By hand, around the end of the year and with the day that most years do not have. */
    @Test
    void daysInNoSeasonAreFoundAroundTheYear() {
        Season summer = new Season(MonthDay.of(11, 1), MonthDay.of(2, 28));
        Season autumn = new Season(MonthDay.of(3, 1), MonthDay.of(5, 31));
        assertEquals(Optional.of("1 June to 31 October, 29 February"), DaysInNoSeason.of(List.of(autumn, summer)));
        Season july = new Season(MonthDay.of(7, 1), MonthDay.of(7, 31));
        assertEquals(Optional.of("1 August to 30 June"), DaysInNoSeason.of(List.of(july)));
        Season half = new Season(MonthDay.of(1, 1), MonthDay.of(6, 30));
        Season rest = new Season(MonthDay.of(7, 1), MonthDay.of(12, 31));
        assertEquals(Optional.empty(), DaysInNoSeason.of(List.of(half, rest)));
    }
}
