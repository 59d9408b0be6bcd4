package org.headfall.scenarios.siting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitMargins;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Limits on volume in siting. Volumes of given rates are worked by hand: the town bore takes 300 m³/d from 1 March 2027 on, 306
 * days of the water year 2027, which are 91.8 ML; what flows by itself is the simulator's, run with the sites dropped in.
 */
class VolumesInSitingTest {

    private static final String DOCUMENT = """
            title: Volumes
            datum: metres above an invented datum
            crs: EPSG:32743
            period: {from: 2026-07-01, for: 2 yr}
            grid: {extent: {west: 400 km, east: 410 km, south: 6300 km, north: 6310 km}, cell: 500 m}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-3, top: -400 m, bottom: -500 m}
            ground: 110 m
            bores:
              - {name: town bore, at: [409.25 km, 6309.25 km], group: proposed, holder: Town, class: town, screen_radius: 100 mm,
                 rate: 300 m3/d, from: 2027-03-01}
              - {name: flowing, at: [404.25 km, 6303.25 km], group: existing, holder: Downs, screen_radius: 100 mm,
                 outlet_level: 97 m, operation: free flow}
            MORE
            accounts: {water_year: 1 January}
            limits:
            LIMITS
            start: {heads: 100 m}
            output: {grids: yearly, bores: monthly, report_after: [1 yr], head_tolerance: 0.5 mm}
            siting:
              screen_radius: 100 mm
              largest_rate: 100 L/s
              efficiency: 60 %
              RULES
            """;

    private static final String OF_TOWN = "the town takes little (bores of Town)";

    @TempDir
    private Path folder;

    /** A search, and what it started from. */
    private record Search(RunInMemory base, SitingResult result) {}

    private ScenarioReading read(String limits, String rules, String more) throws Exception {
        return read(DOCUMENT, limits, rules, more);
    }

    private ScenarioReading read(String text, String limits, String rules, String more) throws Exception {
        Path document = folder.resolve("scenario.yaml");
        Files.writeString(
                document,
                text.replace("MORE\n", more)
                        .replace("LIMITS", limits.stripTrailing())
                        .replace("RULES", rules));
        return ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT);
    }

    private static String limit(String name, String at, String most) {
        return "  - {name: " + name + ", quantity: volume, at: " + at + ", when: ever, at_most: " + most + "}\n";
    }

    private static String limitOfTown(String most) {
        return limit("the town takes little", "bores of Town", most);
    }

    private SitingBase run(ScenarioReading reading, SitingSpecification siting) throws Exception {
        RunPlan plan = RunPlanner.plan(reading, "test", 1);
        return SitingBase.of(
                plan,
                PlanningResponses.of(plan, folder).orComputed(plan, (stage, fraction) -> {}),
                siting,
                (stage, fraction) -> {});
    }

    private Search search(String limits, String rules) throws Exception {
        return search(DOCUMENT, limits, rules);
    }

    private Search search(String text, String limits, String rules) throws Exception {
        ScenarioReading reading = read(text, limits, rules, "");
        SitingSpecification siting = reading.orThrow().planning().siting().orElseThrow();
        SitingBase base = run(reading, siting);
        return new Search(base.run(), SiteSearch.in(base, siting, (stage, fraction) -> {}));
    }

    /** Every cell allows the rate that takes, with the 91.8 ML of the town bore, 150 ML in the 365 days of 2027. */
    @Test
    void theVolumeOfTheHolderDecidesAlikeEverywhere() throws Exception {
        Search search = search(limitOfTown("150 ML"), "holder: Town");
        expectEverywhere(search.result(), (150 - 91.8) * 1000 / 365, OF_TOWN);
        assertEquals(List.of(), search.result().uncounted());
        assertEquals(List.of(), search.result().cautions());
        expectTaken(search, 150 - 91.8, 549);
    }

    /** A rate of 60 m³/d takes 21.9 ML a year: of the 58.2 ML two sites leave 14.4 ML, which is no third. */
    @Test
    void sitesOneAfterAnotherUseItUp() throws Exception {
        Search search = search(limitOfTown("150 ML"), "holder: Town\n  rate: 60 m3/d\n  sites: 3");
        List<Site> sites = search.result().sites();
        assertEquals(2, sites.size());
        assertEquals((58.2 - 21.9) * 1000 / 365, sites.get(1).largestRate(), 1e-6);
        assertEquals(OF_TOWN, sites.get(1).ruling());
        assertEquals(14.4, sites.get(1).effects().get(0).left(), 1e-9);
        assertTrue(
                search.result().missing().contains("what decides is " + OF_TOWN + " in 396"),
                search.result().missing());
        expectTaken(search, 2 * 21.9, 549);
    }

    /** Taking ends on 1 July 2027, after 181 days of that year, though the town bore takes until its end: (150 - 91.8) / 181. */
    @Test
    void aBoreThatStopsEarlierLeavesRoomForTheRestOfTheYear() throws Exception {
        Search search = search(limitOfTown("150 ML"), "holder: Town\n  for: 365 d");
        expectEverywhere(search.result(), (150 - 91.8) * 1000 / 181, OF_TOWN);
        assertEquals(1, search.result().cautions().size());
        assertTrue(search.result().cautions().get(0).contains(OF_TOWN));
        expectTaken(search, 150 - 91.8, 549);
    }

    /** The town bore alone takes more than 90 ML. */
    @Test
    void nothingIsLeftWhereTheBoresOfTheDocumentTakeAll() throws Exception {
        Search search = search(limitOfTown("90 ML"), "holder: Town");
        expectEverywhere(search.result(), 0, OF_TOWN);
        assertEquals(List.of(), search.result().sites());
        assertTrue(
                search.result().missing().contains("Used up"), search.result().missing());
    }

    /** Proposed bores take as much as those of the town. A new bore is of no class of users, and no existing one. */
    @Test
    void limitsOfOthersAreNotCounted() throws Exception {
        String limits = limit("a", "[proposed bores, existing bores]", "150 ML")
                + limit("b", "[bores of Downs, town bore]", "10 ML")
                + limit("c", "bores of town", "10 ML");
        Search search = search(limits, "holder: Town");
        expectEverywhere(search.result(), (150 - 91.8) * 1000 / 365, "a (proposed bores)");
        List<String> reasons = search.result().uncounted().stream()
                .map(UncountedLimit::sentence)
                .toList();
        assertTrue(reasons.contains("a (existing bores) counts the taking of existing bores only"), reasons.toString());
        assertTrue(reasons.contains("b (bores of Downs) counts the taking of bores of Downs only"), reasons.toString());
        assertTrue(reasons.contains("b (town bore) counts the taking of town bore only"), reasons.toString());
        assertTrue(
                reasons.contains("c (bores of the class town) counts the taking of bores of the class town only"),
                reasons.toString());
        assertEquals(4, reasons.size(), reasons.toString());
    }

    /** The meter shows 100 ML in 2027, which counts and not what the run takes. */
    @Test
    void whatMetersShowCounts() throws Exception {
        Files.writeString(
                folder.resolve("meters.csv"),
                "name,date,reading (ML)\ntown bore,2027-01-01,500\ntown bore,2028-01-01,600\n");
        Search search = search(
                DOCUMENT.replace("water_year: 1 January", "water_year: 1 January, meters: meters.csv"),
                limitOfTown("150 ML"),
                "holder: Town");
        expectEverywhere(search.result(), (150 - 100) * 1000 / 365.0, OF_TOWN);
        expectTaken(search, 150 - 100, 549);
    }

    /** Where no bore of the document is proposed, new bores have all of the 36.5 ML: 100 m³/d. */
    @Test
    void newBoresMayBeTheOnlyProposedOnes() throws Exception {
        Search search = search(
                DOCUMENT.replace("group: proposed", "group: existing"),
                limit("a", "proposed bores", "36.5 ML"),
                "holder: Town");
        expectEverywhere(search.result(), 100, "a (proposed bores)");
        expectTaken(search, 36.5, 549);
    }

    /** Both are "bores of the class town" in words, but a new bore of that holder is of no class of users. */
    @Test
    void aHolderCalledLikeAClassIsNotThatClass() throws Exception {
        Search search = search(
                DOCUMENT.replace("holder: Downs", "holder: the class town"),
                limit("c", "bores of town", "10 ML"),
                "holder: the class town");
        assertEquals(1, search.result().uncounted().size());
    }

    /** New bores of nobody who is known are none of a holder's. */
    @Test
    void withoutAHolderOnlyGroupsCount() throws Exception {
        Search search = search(limitOfTown("150 ML"), "largest_lift: 1000 m");
        assertEquals(1, search.result().uncounted().size());
        assertTrue(search.result().sites().get(0).largestRate() > 200);
    }

    /**
     * With the free flow of the document counted, a run of the document with the site among its bores takes as much as is
     * allowed, less what the flowing bore then gives less.
     */
    @Test
    void whatFlowsByItselfCounts() throws Exception {
        String limits = limit("all take little", "all bores", "400 ML") + limit("flow", "flowing", "10000 ML");
        Search search = search(limits, "holder: Town");
        Site site = search.result().sites().get(0);
        assertEquals("all take little (all bores)", site.ruling());
        expectEverywhere(search.result(), site.largestRate(), site.ruling());
        String more = String.format(
                Locale.ROOT,
                "  - {name: new, at: [%.0f m, %.0f m], group: proposed, holder: Town, screen_radius: 100 mm, rate: %.9f m3/d}\n",
                site.x(),
                site.y(),
                site.rate());
        ScenarioReading reading = read(limits, "holder: Town", more);
        RunInMemory with = run(reading, reading.orThrow().planning().siting().orElseThrow())
                .run();
        double lost = left(with, 1, 549) - left(search.base(), 1, 549);
        assertTrue(lost > 1, "the flowing bore gives less by " + lost + " ML");
        assertEquals(lost, left(with, 0, 549), 0.01 * lost);
        LimitResult result = with.limits().get(0);
        assertTrue(result.outcome() instanceof Outcome.Holds, result.outcome().toString());
        expectTaken(search, site.rate() * 0.365 - lost, 549, 0.01 * lost);
    }

    private static double left(RunInMemory run, int limit, double day) {
        LimitMargins margins = run.margins(run.plan().limits().get(limit));
        return StationSeries.interpolate(margins.days(), margins.margins(), day);
    }

    /** In every cell but those in whose middle there is a bore already. */
    private static void expectEverywhere(SitingResult result, double rate, String reason) {
        for (int cell = 0; cell < result.largestRate().length; cell++) {
            double x = result.run().grid().centreX(cell);
            double y = result.run().grid().centreY(cell);
            if (result.run().bores().stream().anyMatch(bore -> bore.x() == x && bore.y() == y)) {
                assertEquals(0, result.largestRate()[cell]);
                continue;
            }
            assertEquals(rate, result.largestRate()[cell], 1e-6 * rate);
            assertEquals(reason, result.reasons().get(result.ruling()[cell]));
        }
    }

    private static void expectTaken(Search search, double volume, double day) {
        expectTaken(search, volume, day, 1e-6 * volume);
    }

    /** What the simulator says that the sites take of the first limit (ML), on the day it is looked at. */
    private static void expectTaken(Search search, double volume, double day, double allowed) {
        SiteCheck.Line line = SiteCheck.of(search.base(), search.result().asked(), search.result())
                .lines()
                .get(0);
        Optional<Limit> limit = search.base().plan().limits().stream().findFirst();
        assertEquals(limit.orElseThrow().nameAndPlace(), line.limit());
        assertEquals("ML", line.unit());
        assertEquals(day, line.day(), 1e-9);
        assertEquals(volume, line.simulated(), allowed);
    }
}
