package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.headfall.scenarios.accounts.AccountSummary;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.findings.Recovery;
import org.headfall.scenarios.limits.CauseShare;
import org.headfall.scenarios.limits.CauseSplit;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.results.AccountSummaries;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResultsReader;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The worked example of each kind of limit, from its document to the answers. */
class LimitsExampleTest {

    /** The folder of the module is where its tests run. */
    static final Path EXAMPLE = Path.of("examples", "limits", "scenario.yaml");

    @TempDir
    static Path folder;

    private static FinishedRun run;

    @BeforeAll
    static void run() throws InputException, IOException {
        ScenarioReading reading = ScenarioReader.read(EXAMPLE, FileReach.FOLDER_OF_DOCUMENT);
        RunPlan plan = RunPlanner.plan(reading, "Headfall test", 2);
        run = new ScenarioRun(plan, StandardOutputs.all(List.of()), (stage, fraction) -> {})
                .into(folder.resolve("results"), false);
    }

    private static LimitResult result(String name, String place) {
        return run.limits().stream()
                .filter(result -> result.limit().name().equals(name)
                        && result.limit().station().equals(place))
                .findFirst()
                .orElseThrow();
    }

    private static Outcome.Worst worst(String name, String place) {
        return result(name, place).outcome().worstIfAny().orElseThrow();
    }

    @Test
    void everyLimitIsJudged() {
        Map<String, String> not = run.limits().stream()
                .filter(result -> result.outcome() instanceof Outcome.NotEvaluated)
                .collect(Collectors.toMap(
                        result ->
                                result.limit().name() + " at " + result.limit().station(),
                        result -> ((Outcome.NotEvaluated) result.outcome()).reason()));
        assertEquals(Map.of(), not);
        assertEquals(
                Set.of("holds", "crossed"),
                run.limits().stream().map(result -> result.outcome().words()).collect(Collectors.toSet()));
    }

    /** As the accounts count them: of the first water year 77.5 ML in 370 days by one meter, 452 ML by another. */
    @Test
    void volumesAreThoseOfTheAccounts() throws IOException {
        Outcome.Worst emu = worst("yearly volume", "Emu Bore");
        Outcome.Worst shire = worst("yearly volume", "bores of Wirra Shire");
        assertEquals(77.5 * 365 / 370, emu.value(), 1e-6);
        assertEquals(452 + 14 * 86.4 / 1000 * 365, shire.value(), 1e-6);
        assertEquals("In the water year from 2026-07-01 the meter counts of Emu Bore.", emu.note());
        assertEquals(
                "In the water year from 2026-07-01 the meter counts of Town 1; of the others what the run takes.",
                shire.note());
        List<String> lines = Files.readAllLines(folder.resolve("results").resolve("accounts.csv"));
        assertEquals(largest(lines, "bore,Emu Bore"), emu.value(), 1e-3);
        assertEquals(largest(lines, "holder,Wirra Shire"), shire.value(), 1e-3);
    }

    /** Largest volume that counts, of all water years of an account. */
    private static double largest(List<String> accounts, String of) {
        return accounts.stream()
                .filter(line -> line.contains("," + of + ","))
                .mapToDouble(line -> Double.parseDouble(line.split(",", -1)[8]))
                .max()
                .orElseThrow();
    }

    /** Shares, with what they leave, are the worst value itself wherever the table says so; otherwise there are none. */
    @Test
    void sharesAddUpToTheWorstValue() {
        int split = 0;
        for (LimitResult result : run.limits()) {
            CauseSplit made = CauseSplit.of(result, run.description().endDay());
            double sum =
                    result.shares().stream().mapToDouble(CauseShare::drawdown).sum();
            if (made.wordsFor(result.limit()).endsWith(": the worst value")) {
                double value = result.outcome().worstIfAny().orElseThrow().value();
                assertEquals(value, sum, 5e-4, result.limit().nameAndPlace());
                split++;
            }
            assertTrue(
                    made.isMade() || result.shares().isEmpty(), result.limit().nameAndPlace());
        }
        assertTrue(split >= 5, split + " are split");
        assertEquals(
                CauseSplit.SINCE_A_DAY,
                CauseSplit.of(
                        result("cumulative since 2030", "homestead"),
                        run.description().endDay()));
        assertEquals(List.of(), result("cumulative in all", "homestead").shares());
        assertEquals(
                List.of(), result("cumulative since five years", "homestead").shares());
    }

    /** 15 km and 2 km are Pythagoras on the coordinates of the document. */
    @Test
    void distancesAreThoseOfTheMap() {
        assertEquals(15_000, worst("distance", "Mound Springs").value(), 1e-6);
        assertEquals(Math.hypot(6000, 9000), worst("distance", "Emu Bore").value(), 1e-6);
        assertEquals(
                6000,
                worst("distance to the reserve", "reserve (places.geojson)").value(),
                1e-6);
    }

    /** A spring follows head linearly, so what is left of its water is what is left of its head above the outlet. */
    @Test
    void theShareOfASpringIsThatOfItsHead() {
        Outcome.Worst share = worst("spring share", "Mound Springs");
        Outcome.Worst water = worst("spring water", "Mound Springs");
        double without = water.value() / (share.value() / 100);
        double drawdown = (without - water.value()) * 86.4 / 35;
        List<CauseShare> shares = result("spring share", "Mound Springs").shares();
        double sum = shares.stream().mapToDouble(CauseShare::drawdown).sum();
        assertEquals(share.day(), water.day());
        assertEquals(drawdown, sum, 1e-3);
        assertTrue(shares.get(0).cause().startsWith("Town"), shares::toString);
    }

    /** Each spring feels the end of taking the later, the farther it lies. */
    @Test
    void theWorstAtAFarSpringComesAfterTakingStops() {
        Outcome.Worst near = worst("springs keep their head", "Mound Springs");
        Outcome.Worst far = worst("springs keep their head", "Far Seep");
        assertTrue(far.day() > run.description().endDay(), "day " + far.day());
        assertTrue(near.day() < far.day(), near.day() + " and " + far.day());
        assertTrue(near.note().contains("had passed") && far.note().contains("had passed"), far.note());
    }

    /** The worst cell of the reserve has at least the drawdown of the spring in it. */
    @Test
    void aReserveIsJudgedByItsWorstCell() {
        Outcome.Worst cell = worst("reserve", "reserve (places.geojson)");
        double atSpring = result("spring share", "Mound Springs").shares().stream()
                .mapToDouble(CauseShare::drawdown)
                .sum();
        assertTrue(cell.value() > atSpring, cell.value() + " m, at the spring " + atSpring + " m");
        assertTrue(cell.note().contains("cell at x"), cell.note());
    }

    /**
     * Readings of 1204.0 ML on 28 June 2026, 1281.5 ML on 3 July 2027 and 1347.2 ML on 1 July 2028, on straight lines: 365 of
     * 370 days in the first water year, 2 of 370 days and all of the second interval in the next.
     */
    @Test
    void accountsPutMetersAndSchedulesBesideEntitlements() throws IOException {
        List<String> lines = Files.readAllLines(folder.resolve("results").resolve("accounts.csv"));
        double first = 77.5 * 365 / 370;
        double second = 77.5 * 2 / 370 + 65.7;
        double taken = 70.0 / 365.25 * 365;
        assertHas(
                lines,
                "2026-07-01,2027-07-01,bore,Emu Bore,1,1,%.3f,%.3f,%.3f,90.000,%.3f,%.1f,"
                        + "\"The meter counts, on straight lines between readings.\"",
                taken,
                first,
                first,
                90 - first,
                100 * first / 90);
        assertHas(
                lines,
                "2027-07-01,2028-07-01,zone,northern zone,1,1,%.3f,%.3f,%.3f,90.000",
                70.0 / 365.25 * 366,
                second,
                second);
    }

    /** A holder with a meter of 452 ML on one of two bores: that and what the run takes by the other. */
    @Test
    void aSumTakesMetersWhereThereAreAny() throws IOException {
        List<String> lines = Files.readAllLines(folder.resolve("results").resolve("accounts.csv"));
        double bore = 14 * 86.4 / 1000 * 365;
        double counted = 452 + bore;
        assertHas(
                lines,
                "2026-07-01,2027-07-01,holder,Wirra Shire,2,1,%.3f,452.000,%.3f,1000.000,%.3f,%.1f,"
                        + "\"Meters of 1 of 2 bores count, on straight lines between readings; of the others what the run takes.\"",
                2 * bore,
                counted,
                1000 - counted,
                counted / 10);
        double leap = 14 * 86.4 / 1000 * 366;
        assertHas(
                lines,
                "2027-07-01,2028-07-01,bore,Town 1,1,0,%.3f,,%.3f,500.000,%.3f,%.1f,"
                        + "\"Readings of its meter do not reach over the year, so it does not count.\"",
                leap,
                leap,
                500 - leap,
                leap / 5);
        assertTrue(
                lines.stream()
                        .anyMatch(line -> line.startsWith("2026-07-01,2027-07-01,zone,southern zone,3,1,")
                                && line.contains(",452.000,")),
                () -> String.join("\n", lines.subList(0, 12)));
        // A capped bore without an entitlement takes nothing, and does not keep all bores from being compared.
        assertTrue(
                lines.stream()
                        .anyMatch(line -> line.startsWith("2026-07-01,2027-07-01,all bores,,5,2,")
                                && line.contains(",1150.000,-")
                                && line.contains("4 of 5 bores have an entitlement.")),
                () -> String.join("\n", lines.subList(0, 12)));
    }

    /** Whoever takes more than the entitlement comes first, in the table of the report too. */
    @Test
    void holdersOverTheirEntitlementComeFirst() throws IOException {
        Path results = folder.resolve("results");
        List<String> lines = Files.readAllLines(results.resolve("accounts.csv"));
        List<AccountSummary> holders = AccountSummaries.ofHolders(AccountSummaries.read(results));
        long over = lines.stream()
                .filter(line -> line.contains(",holder,Brolga Downs,") && line.split(",", -1)[10].startsWith("-"))
                .count();
        assertTrue(over > 0, "the free flow of Brolga Bore is more than its entitlement");
        assertEquals("Brolga Downs", holders.get(0).name());
        assertEquals(over, holders.get(0).yearsOver());
        assertEquals(largest(lines, "holder,Brolga Downs"), holders.get(0).countedMegalitres(), 1e-9);
        assertEquals(
                Set.of("Brolga Downs", "Wirra Shire", "Emu Park"),
                holders.stream().map(AccountSummary::name).collect(Collectors.toSet()));
        assertTrue(Files.readString(results.resolve("report.html")).contains("Water accounts"));
    }

    /** A reading of June 2026 lies in a water year that neither run nor any other reading says anything of. */
    @Test
    void yearsOfWhichNothingIsKnownAreLeftOut() throws IOException {
        List<String> lines = Files.readAllLines(folder.resolve("results").resolve("accounts.csv"));
        assertTrue(lines.stream().noneMatch(line -> line.startsWith("2025-07-01")), lines.get(1));
        assertEquals(1 + 20 * 11, lines.size());
    }

    private static void assertHas(List<String> lines, String start, Object... values) {
        String wanted = String.format(Locale.ROOT, start, values);
        assertTrue(
                lines.stream().anyMatch(line -> line.startsWith(wanted)),
                () -> wanted + "\nis none of\n" + String.join("\n", lines.subList(0, 24)));
    }

    /**
     * Two ways to the same figures: limits by a run through time, recovery by superposition. The stated errors have to cover
     * the difference, and what drawdown seems to leap by when taking stops, which in truth it does not.
     */
    @Test
    void recoveryDiffersFromLimitsByNoMoreThanItsError() {
        assertAgree(
                worst("neighbours keep their lift", "Brolga Bore").value(), recovery("Brolga Bore"), Recovery::atStop);
        assertAgree(worst("neighbours keep their lift", "Emu Bore").value(), recovery("Emu Bore"), Recovery::atStop);
        assertAgree(worst("springs keep their head", "Far Seep").value(), recovery("Far Seep"), Recovery::largest);
        assertAgree(
                worst("springs keep their head", "Mound Springs").value(),
                recovery("Mound Springs"),
                Recovery::largest);
        Recovery watch = recovery("Watch Bore");
        assertTrue(watch.largest() - watch.atStop() > 1e-3, "the grid lets drawdown leap: " + watch);
        assertAgree(watch.atStop(), watch, Recovery::largest);
        assertTrue(watch.error() < 0.005, "error " + watch.error());
    }

    private static Recovery recovery(String station) {
        return run.findings().recovery().lines().stream()
                .filter(one -> one.station().equals(station) && one.taking().equals("proposed bores"))
                .findFirst()
                .orElseThrow();
    }

    private static void assertAgree(double expected, Recovery found, ToDoubleFunction<Recovery> figure) {
        assertEquals(expected, figure.applyAsDouble(found), found.error(), found.toString());
    }

    @Test
    void nothingIsEverCalledApproved() throws IOException {
        String table = Files.readString(folder.resolve("results").resolve("limits.csv"));
        assertFalse(table.contains("approved"));
        assertEquals(
                run.limits(),
                new ResultsReader().read(folder.resolve("results")).limits());
    }

    /** 2026 to 2046 every year; water years and years of other limits are no reason to keep maps. */
    @Test
    void mapsAreJudgedOnTheFirstDayOfEachYear() {
        assertTrue(
                worst("stays confined", "every cell").note().contains("judged on 21 days"),
                worst("stays confined", "every cell").note());
    }

    /** What the proposal adds to a case is nothing in that case itself. */
    @Test
    void theCasesOfTheOtherDocumentAreJudged() throws InputException, IOException {
        ScenarioReading reading =
                ScenarioReader.read(EXAMPLE.resolveSibling("cases.yaml"), FileReach.FOLDER_OF_DOCUMENT);
        Map<String, FinishedRun> cases = new CaseRuns(
                        RunPlanner.cases(reading, "Headfall test", 2), List.of(), (stage, fraction) -> {})
                .into(folder.resolve("cases"), false);
        assertEquals(6, cases.size());
        cases.values()
                .forEach(one -> one.limits()
                        .forEach(result -> assertFalse(
                                result.outcome() instanceof Outcome.NotEvaluated,
                                () -> result.limit().name())));
        assertEquals(
                0,
                cases.get("existing as used")
                        .limits()
                        .get(0)
                        .outcome()
                        .worstIfAny()
                        .orElseThrow()
                        .value(),
                1e-9);
        assertTrue(cases.get("with the proposal")
                        .limits()
                        .get(0)
                        .outcome()
                        .worstIfAny()
                        .orElseThrow()
                        .value()
                > 1);
    }
}
