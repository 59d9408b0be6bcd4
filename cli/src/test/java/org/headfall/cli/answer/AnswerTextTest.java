package org.headfall.cli.answer;

import static org.junit.jupiter.api.Assertions.assertFalse;
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
import org.headfall.scenarios.accounts.AccountSummary;
import org.headfall.scenarios.evidence.Doubt;
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
        return answer(loss, aboveIntake, List.of(), limits);
    }

    private static RunAnswer answer(
            double loss, double aboveIntake, List<AccountSummary> overEntitlement, LimitAnswer... limits) {
        return new RunAnswer(
                "Two bores",
                DATE.minusYears(1),
                DATE,
                Verdict.of(List.of(limits)),
                List.of(limits),
                Optional.of(new Extreme("spring", loss, DATE)),
                Optional.of(new Extreme("town bore", aboveIntake, DATE)),
                List.of(),
                List.of(),
                overEntitlement,
                List.of(new Doubt("town bore", "gives no water in the whole run.")),
                0,
                OptionalDouble.empty(),
                false,
                0,
                Optional.of("12 to 30 yr"),
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
        assertTrue(said.contains("Not as asked town bore gives no water in the whole run."), said);
        assertTrue(said.contains("Sealing bed adjusts to a change of head in 12 to 30 yr"), said);
        assertTrue(said(answer(0.02, 3)).contains("Largest loss of head 0.02 m at spring on 2041-03-01"));
    }

    @Test
    void holdersOverTheirEntitlementAreSaid() {
        AccountSummary park = new AccountSummary("holder", "Emu Park", 20, 3, DATE.minusYears(1), 95.2, 90);
        AccountSummary shire = new AccountSummary("holder", "Wirra Shire", 20, 1, DATE.minusYears(1), 1001, 1000);
        String said = said(answer(1, 1, List.of(park, shire)));
        assertTrue(
                said.contains("Over entitlement Emu Park in 3 of 20 water years, 95.20 of 90.00 ML from 2040-03-01;"
                        + " and 1 more, see accounts.csv"),
                said);
        assertFalse(said(answer(1, 1)).contains("entitlement"));
    }

    @Test
    void limitsAndThePlacesWhereTheyAreJudgedAreToldApart() {
        String said = said(answer(
                1,
                1,
                limit("springs", "north", Outcome.Kind.CROSSED, -1),
                limit("springs", "south", Outcome.Kind.CROSSED, -2),
                limit("neighbours", "farm", Outcome.Kind.HOLDS, 1)));
        assertTrue(said.contains("1 of 2 limits is crossed at 2 of 3 places, kept at 1 place."), said);
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

    /** Three crossed, two kept, one undecided and one not judged are seven. */
    @Test
    void crossedKeptAndUnsureLimitsAddUp() {
        String said = said(answer(
                1,
                1,
                limit("a", "north", Outcome.Kind.CROSSED, -1),
                limit("b", "north", Outcome.Kind.CROSSED, -2),
                limit("c", "north", Outcome.Kind.CROSSED, -1.5),
                limit("d", "north", Outcome.Kind.UNDECIDED, 0.01),
                limit("e", "north", Outcome.Kind.NOT_EVALUATED, 0),
                limit("f", "north", Outcome.Kind.HOLDS, 1),
                limit("g", "north", Outcome.Kind.HOLDS, 1)));
        assertTrue(said.contains("3 of 7 limits are crossed, 2 are kept, nothing sure can be said of 2."), said);
    }

    private static LimitAnswer crossedFrom(LocalDate date, String name, double margin) {
        LimitAnswer one = limit(name, "north", Outcome.Kind.CROSSED, margin);
        return new LimitAnswer(
                name,
                one.station(),
                one.outcome(),
                one.allowed(),
                one.worst(),
                one.margin(),
                one.relativeMargin(),
                one.unit(),
                one.worstOn(),
                Optional.of(date),
                one.note(),
                one.drawdownByCause(),
                one.reason());
    }

    /** What is crossed first leads, as in the report; then those farthest beyond, and the list is cut at the other end. */
    @Test
    void theFarthestCrossedAreNotCutOff() {
        LimitAnswer[] limits = new LimitAnswer[8];
        for (int k = 0; k < limits.length; k++) {
            limits[k] = crossedFrom(DATE.plusDays(k), "limit " + k, -0.1 * (k + 1));
        }
        String said = said(answer(1, 1, limits));
        assertTrue(said.indexOf("crossed: limit 0,") < said.indexOf("crossed: limit 7,"), said);
        assertTrue(said.indexOf("crossed: limit 7,") < said.indexOf("crossed: limit 6,"), said);
        assertTrue(said.contains("crossed: limit 3,") && !said.contains("crossed: limit 2,"), said);
        assertTrue(said.contains("and 2 more, see limits.csv"), said);
    }

    /** Without a test of grid and boundaries the verdict does not stand alone. */
    @Test
    void whatWasNotTestedStandsBesideTheVerdict() {
        String said = said(answer(1, 1, limit("springs", "north", Outcome.Kind.CROSSED, -0.02)));
        assertTrue(
                said.contains("is crossed. Judged with the error of time steps and solver alone: what the grid and far"
                        + " boundaries add was not tested and can be larger (run --doubts finds it)."),
                said);
        assertFalse(said(answer(1, 1)).contains("Judged with"), "nothing is judged");
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
