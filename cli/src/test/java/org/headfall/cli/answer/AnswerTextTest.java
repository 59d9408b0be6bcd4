package org.headfall.cli.answer;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.cli.answer.RunAnswer.Effort;
import org.headfall.cli.answer.RunAnswer.Extreme;
import org.headfall.scenarios.limits.Outcome;
import org.junit.jupiter.api.Test;
import picocli.CommandLine.Help.Ansi;

/** What is said of answers made up so that the words follow by hand. */
class AnswerTextTest {

    private static final LocalDate DATE = LocalDate.of(2041, 3, 1);

    private static LimitAnswer limit(String name, String station, Outcome.Kind outcome, double margin) {
        boolean judged = outcome != Outcome.Kind.NOT_EVALUATED;
        return new LimitAnswer(
                name,
                station,
                outcome,
                5,
                judged ? OptionalDouble.of(5 - margin) : OptionalDouble.empty(),
                judged ? OptionalDouble.of(margin) : OptionalDouble.empty(),
                judged ? OptionalDouble.of(margin / 5) : OptionalDouble.empty(),
                "m",
                judged ? Optional.of(DATE) : Optional.empty(),
                Optional.empty(),
                "",
                Map.of(),
                "");
    }

    private static RunAnswer answer(double loss, double aboveIntake, LimitAnswer... limits) {
        return new RunAnswer(
                "Two bores",
                DATE.minusYears(1),
                DATE,
                Verdict.of(List.of(limits)),
                List.of(limits),
                Optional.of(new Extreme("spring", loss, DATE)),
                Optional.of(new Extreme("town bore", aboveIntake, DATE)),
                List.of(),
                0,
                OptionalDouble.empty(),
                false,
                0,
                new Effort(400, 20, false, "", 1, 100, 1),
                Optional.empty(),
                Optional.empty(),
                "results",
                List.of());
    }

    private static String said(RunAnswer answer) {
        StringWriter text = new StringWriter();
        AnswerText.write(answer, new PrintWriter(text), Ansi.OFF);
        return text.toString().replaceAll("\\s+", " ");
    }

    /** A pump that is cut back to its intake has no water above it, which is not the same as no such bore. */
    @Test
    void noWaterAboveAPumpIsSaidWithItsPlace() {
        String said = said(answer(0.004, 0));
        assertTrue(said.contains("Least water above pump 0.00 m at town bore on 2041-03-01"), said);
        assertTrue(said.contains("Largest loss of head none"), said);
        assertTrue(said(answer(0.02, 3)).contains("Largest loss of head 0.02 m at spring on 2041-03-01"));
    }

    @Test
    void limitsAndThePlacesWhereTheyAreJudgedAreToldApart() {
        String said = said(answer(
                1,
                1,
                limit("springs", "north", Outcome.Kind.CROSSED, -1),
                limit("springs", "south", Outcome.Kind.CROSSED, -2),
                limit("neighbours", "farm", Outcome.Kind.HOLDS, 1)));
        assertTrue(said.contains("1 of 2 limits is crossed at 2 of 3 places."), said);
        said = said(answer(
                1,
                1,
                limit("springs", "north", Outcome.Kind.HOLDS, 1),
                limit("springs", "south", Outcome.Kind.UNDECIDED, 0.01),
                limit("neighbours", "farm", Outcome.Kind.HOLDS, 1)));
        assertTrue(said.contains("1 of 2 limits are kept, with nothing sure at 1 of 3 places."), said);
        said = said(answer(1, 1, limit("springs", "north", Outcome.Kind.HOLDS, 1)));
        assertTrue(said.contains("The field holds: the one limit is kept."), said);
    }

    @Test
    void whatCouldNotBeJudgedIsNotCalledUndecided() {
        Map<String, RunAnswer> cases = new LinkedHashMap<>();
        cases.put(
                "as used",
                answer(
                        1,
                        1,
                        limit("a", "north", Outcome.Kind.HOLDS, 0.0004),
                        limit("b", "north", Outcome.Kind.UNDECIDED, 0.001),
                        limit("c", "north", Outcome.Kind.NOT_EVALUATED, 0),
                        limit("d", "north", Outcome.Kind.NOT_EVALUATED, 0)));
        StringWriter text = new StringWriter();
        CaseText.write(new CaseAnswers(cases, "results"), new PrintWriter(text), Ansi.OFF);
        String said = text.toString().replaceAll("\\s+", " ");
        assertTrue(said.contains("crossed undecided not judged as used 4 1 0 1 2"), said);
        assertTrue(
                said.contains("closest: b, at north; worst 4.999 m on 2041-03-01, allowed 5.000 m (undecided)"), said);
    }
}
