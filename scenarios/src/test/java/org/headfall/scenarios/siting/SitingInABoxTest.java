package org.headfall.scenarios.siting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.solver.analytic.function.WellFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Rules of siting in a square of 10.5 km that no water enters, where levels are known by hand. What a bore takes comes from
 * storage, so heads fall by {@code Q t / (S A)} on average; in a bore in the middle of a square they are lower than that by
 * {@code Q / (4 pi T) ln(4 A / (1.781 C r²))} with the shape factor C = 30.8828 once the rim is felt everywhere (Dietz 1965,
 * Determination of average reservoir pressure from build-up surveys, Journal of Petroleum Technology 17, 955-959; the factor
 * for a square is from memory), which is after {@code 0.1 S A / T}, 55 days here.
 */
class SitingInABoxTest {

    private static final double T = 200;
    private static final double S = 1e-3;
    private static final double AREA = 10_500.0 * 10_500.0;
    private static final double RADIUS = 0.1;

    /** Two years. */
    private static final double DAYS = 731;

    /** Loss in the bore B Q. */
    private static final double LOSS = 2e-3;

    private static final double START = 100;
    private static final double GROUND = 110;

    private static final String DOCUMENT = """
            title: A box
            datum: metres above an invented datum
            crs: EPSG:32743
            period: {from: 2026-07-01, for: 2 yr}
            grid: {extent: {west: 400 km, east: 410.5 km, south: 6300 km, north: 6310.5 km}, cell: 500 m}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-3, top: -400 m, bottom: -500 m}
            ground: 110 m
            springs:
              - {name: box spring, at: [402.25 km, 6302.25 km], outlet: 105 m, conductance: 10 m2/d}
            protected:
              - {name: point, at: [409.25 km, 6301.25 km]}
            bores:
              - {name: unused, at: [409.25 km, 6309.25 km], group: proposed, screen_radius: 100 mm, rate: 0 L/s}
            start: {heads: 100 m}
            output: {grids: yearly, bores: monthly, report_after: [1 yr], head_tolerance: 0.5 mm}
            siting:
              screen_radius: 100 mm
              well_loss: {linear: 2e-3 d/m2}
              largest_rate: 100 L/s
              efficiency: 60 %
              delivery_head: 10 m
              RULES
            """;

    @TempDir
    private Path folder;

    /** A search, and what it started from. */
    private record Search(RunInMemory base, SitingResult result) {

        int middle() {
            return result.run().grid().locate(405_250, 6_305_250);
        }

        String reason(int cell) {
            return result.reasons().get(result.ruling()[cell]);
        }
    }

    /** Searches by some rules in the box with some words of its document changed, each followed by what it becomes. */
    private Search search(String rules, String... changes) throws Exception {
        Path document = folder.resolve("scenario.yaml");
        String text = DOCUMENT.replace("RULES", rules);
        for (int i = 0; i < changes.length; i += 2) {
            assertTrue(text.contains(changes[i]), changes[i]);
            text = text.replace(changes[i], changes[i + 1]);
        }
        Files.writeString(document, text);
        ScenarioReading reading = ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT);
        SitingSpecification siting = reading.orThrow().planning().siting().orElseThrow();
        RunPlan plan = RunPlanner.plan(reading, "test", 1);
        SitingBase base = SitingBase.of(
                plan,
                PlanningResponses.of(plan, folder).orComputed(plan, (stage, fraction) -> {}),
                siting,
                (stage, fraction) -> {});
        return new Search(base.run(), SiteSearch.in(base, siting, (stage, fraction) -> {}));
    }

    /** Fall of the level in a bore in the middle after two years for each m³/d (d/m²). */
    private static double fall() {
        return fall(DAYS);
    }

    private static double fall(double days) {
        double own = Math.log(4 * AREA / (1.781 * 30.8828 * RADIUS * RADIUS)) / (4 * Math.PI * T);
        return days / (S * AREA) + own + LOSS;
    }

    /** The level may fall from 100 to 60 m, whichever rule says so; more than the hand value by no more than 1 %. */
    private static void expectFortyMetres(Search search, String reason) {
        double expected = 40 / fall();
        assertEquals(reason, search.reason(search.middle()));
        assertEquals(expected, search.result().largestRate()[search.middle()], 0.01 * expected);
        Site site = search.result().sites().get(0);
        assertEquals(reason, site.ruling());
        assertEquals(60, site.level(), 1e-3);
        double simulated = SiteCheck.of(search.base(), search.result().asked(), search.result())
                .levels()
                .get(0);
        assertEquals(60, simulated, 0.02);
    }

    /**
     * A neighbour 1.5 km away takes 8,000 m³/d in two dry seasons, from day 200 to 260 and 565 to 625 of 731. Heads are lowest when
     * it stops, between days on which the document records anything. By Theis (1935) with images beyond the sides for the neighbour,
     * by Dietz (1965) for the new bore.
     */
    @Test
    void aDrySeasonOfANeighbourDecides() throws Exception {
        Files.writeString(folder.resolve("seasons.csv"), """
                date,rate (m3/d)
                2026-07-01,0
                2027-01-17,8000
                2027-03-18,0
                2028-01-17,8000
                2028-03-17,0
                """);
        Search search = search(
                "largest_lift: 60 m", "bores:\n", """
                bores:
                  - name: neighbour
                    at: [406.75 km, 6305.25 km]
                    group: existing
                    screen_radius: 100 mm
                    rate: {file: seasons.csv, column: rate}
                """, "grids: yearly, bores: monthly", "grids: yearly, bores: yearly");
        double season = lowered(625 - 200) - lowered(625 - 260) + lowered(625 - 565);
        double end = lowered(731 - 200) - lowered(731 - 260) + lowered(731 - 565) - lowered(731 - 625);
        double expected = (40 - season) / fall(625);
        double atTheEnd = (40 - end) / fall(DAYS);
        assertTrue(expected < 0.95 * atTheEnd, expected + " in the season, " + atTheEnd + " at the end");
        int middle = search.middle();
        assertEquals("largest lift", search.reason(middle));
        assertEquals(expected, search.result().largestRate()[middle], 0.01 * expected);
        for (Site site : search.result().sites()) {
            assertEquals(60, site.level(), 1e-3);
            double simulated = SiteCheck.of(search.base(), search.result().asked(), search.result())
                    .levels()
                    .get(0);
            assertEquals(60, simulated, 0.05);
        }
    }

    /** Fall of head in the middle by the neighbour some days after it has begun to take (m). */
    private static double lowered(double days) {
        return 8000 * fall(405_250, 6_305_250, 406_750, 6_305_250, days);
    }

    /** By hand: to 120 m, 10 m above the ground, water is lifted by at most 60 m, so from 60 m. */
    @Test
    void theLargestLiftDecides() throws Exception {
        expectFortyMetres(search("largest_lift: 60 m"), "largest lift");
    }

    /** By hand: 25 m above an aquifer top at 35 m is 60 m. */
    @Test
    void theLevelAboveTheAquiferTopDecides() throws Exception {
        expectFortyMetres(search("above_aquifer_top: 25 m", "top: -400 m", "top: 35 m"), "level above the aquifer top");
    }

    /** By hand: 50 m below the ground is 60 m. */
    @Test
    void theDeepestPumpingLevelDecides() throws Exception {
        expectFortyMetres(search("deepest_pumping_level: 50 m"), "deepest pumping level");
    }

    /** By hand: the bottom of the aquifer lies 610 m below the ground. */
    @Test
    void theDepthOfBoresDecides() throws Exception {
        Search deeper = search("deepest_bore: 611 m");
        assertTrue(deeper.result().largestRate()[deeper.middle()] > 0);
        Search tooDeep = search("deepest_bore: 609 m");
        assertEquals(0, tooDeep.result().largestRate()[tooDeep.middle()]);
        assertEquals("deepest bore", tooDeep.reason(tooDeep.middle()));
        assertEquals(List.of(), tooDeep.result().sites());
        assertTrue(
                tooDeep.result().missing().contains("what decides is deepest bore in 441"),
                tooDeep.result().missing());
    }

    /**
     * By hand: nothing within 1 km of the spring, at most 50 ML/yr, which is 50,000 / 365.25 m³/d, within 3 km, more beyond. The
     * spring is dry, so it gives nothing back.
     */
    @Test
    void classesOfDistanceToSpringsDecide() throws Exception {
        Search search = search("distances: {springs: [{up_to: 50 ML/yr, at_least: 1 km}, {at_least: 3 km}]}");
        int[] counts = new int[3];
        for (int cell = 0; cell < search.result().largestRate().length; cell++) {
            double x = search.result().run().grid().centreX(cell);
            double y = search.result().run().grid().centreY(cell);
            double away = Math.hypot(x - 402_250, y - 6_302_250);
            double rate = search.result().largestRate()[cell];
            if (away < 1000) {
                counts[0]++;
                assertEquals(0, rate, "at " + away);
                assertEquals("distance to springs", search.reason(cell));
            } else if (away < 3000) {
                counts[1]++;
                assertEquals(50_000 / 365.25, rate, 1e-9, "at " + away);
                assertEquals("distance to springs", search.reason(cell));
            } else if (x == 409_250 && y == 6_309_250) {
                // Where a bore stands there is no room for another.
                assertEquals(0, rate);
                assertEquals("distance to bores", search.reason(cell));
            } else {
                counts[2]++;
                assertTrue(rate > 1000, "at " + away);
            }
        }
        assertTrue(counts[0] > 0 && counts[1] > 0 && counts[2] > 0);
    }

    /**
     * By hand: 1,000 m³/d in the middle lower the level to 100 m less 1,000 times the fall, and water is lifted from there to 120
     * m. E = rho g H / efficiency with 998.2 kg/m³ at 20 °C (Kell 1975, Journal of Chemical and Engineering Data 20, 97-105) and
     * 9.80665 m/s² (standard acceleration of free fall, ISO 80000-3) is joules for a cubic metre; a ML has a thousand of them
     * and a kWh is 3.6e6 J.
     */
    @Test
    void liftAndEnergyAreThoseByHand() throws Exception {
        Search search = search("rate: 1000 m3/d");
        double lift = GROUND + 10 - (START - 1000 * fall());
        double energy = 998.2 * 9.80665 * lift / 0.6 * 1000 / 3.6e6;
        int middle = search.middle();
        assertEquals(lift, search.result().lift()[middle], 0.005 * lift);
        assertEquals(energy, search.result().energy()[middle], 0.005 * energy);
        Site site = search.result().sites().get(0);
        assertEquals(120 - site.level(), site.lift(), 1e-9);
        assertEquals(4.5319 * site.lift(), site.energy(), 1e-3 * site.energy());
    }

    /**
     * By hand: of the 100 m above 0 m at least 90 % have to stay, so heads may fall by 10 m. With 5,000 m²/d the slope towards a
     * bore is flat, and heads fall by {@code Q t / (S A)} everywhere but near it.
     */
    @Test
    void sharesOfAvailableHeadDecide() throws Exception {
        Search search =
                search("largest_lift: 1000 m", "top: -400 m", "top: 0 m", "200 m2/d", "5000 m2/d", "start:", """
                limits:
                  - name: most of the head stays
                    quantity: share of available head
                    above: aquifer top
                    at: point
                    cause: everyone
                    when: ever
                    at_least: 90 %
                start:""");
        assertEquals(List.of(), search.result().uncounted());
        assertEquals("most of the head stays (point)", search.reason(search.middle()));
        double expected = 10 * S * AREA / DAYS;
        assertEquals(expected, search.result().largestRate()[search.middle()], 0.01 * expected);
        expectUsedUp(search, "%", 10, DAYS);
    }

    /**
     * By hand: from 1 July 2027 on, day 365 of 731, heads may fall by 5 m, in 366 days; from the mean of 2027 on, which is that
     * of 2 July 2027 where heads fall evenly, in some 364.5 days.
     */
    @ParameterizedTest
    @CsvSource({"2027-07-01, 366", "mean of 2027 to 2027, 364.5"})
    void drawdownSinceADayOrYearsOfTheRunDecides(String since, double days) throws Exception {
        Search search = search("largest_lift: 1000 m", "200 m2/d", "5000 m2/d", "start:", """
                limits:
                  - name: heads fall slowly
                    quantity: drawdown
                    at: point
                    cause: everyone
                    compared_with: SINCE
                    when: ever
                    at_most: 5 m
                start:""", "SINCE", since);
        double expected = 5 * S * AREA / days;
        assertEquals(expected, search.result().largestRate()[search.middle()], 0.01 * expected);
        expectUsedUp(search, "m", 5, DAYS);
    }

    /**
     * Heads fall unevenly here: by the bore and its images beyond the sides of the box, each by Theis (1935), Transactions of the
     * American Geophysical Union 16, 519-524. From the mean of the first year on, which begins on day 0, in the middle of the
     * box; from day 5 on, when little has come of what comes by day 10, 1 km from the point.
     */
    @ParameterizedTest
    @CsvSource({"mean of 2026 to 2026, 0, 365, 405250, 6305250", "2026-01-06, 5, 5, 408250, 6301250"})
    void drawdownSinceTheFirstDaysDecidesByTheis(String since, double from, double to, double x, double y)
            throws Exception {
        Search search = search("largest_lift: 1000 m", "2026-07-01", "2026-01-01", "start:", """
                limits:
                  - name: heads fall slowly
                    quantity: drawdown
                    at: point
                    cause: everyone
                    compared_with: SINCE
                    when: ever
                    at_most: 1 m
                start:""", "SINCE", since);
        int parts = 1000;
        double mean = 0;
        for (int i = 0; i < parts; i++) {
            mean += fallAtPoint(x, y, from + (to - from) * (i + 0.5) / parts) / parts;
        }
        double expected = 1 / (fallAtPoint(x, y, 730) - mean);
        int cell = search.result().run().grid().locate(x, y);
        assertEquals("heads fall slowly (point)", search.reason(cell));
        assertEquals(expected, search.result().largestRate()[cell], 0.006 * expected);
    }

    /** Fall of head at the point for each m³/d taken elsewhere in the box for some days (d/m²). */
    private static double fallAtPoint(double x, double y, double day) {
        return fall(409_250, 6_301_250, x, y, day);
    }

    /** Fall of head in one place for each m³/d taken in another, both in the box, for some days (d/m²). */
    private static double fall(double atX, double atY, double x, double y, double day) {
        double side = 10_500;
        double sum = 0;
        for (int i = -8; i <= 8; i++) {
            for (int j = -8; j <= 8; j++) {
                for (int mirrored = 0; mirrored < 4; mirrored++) {
                    double east = 2 * i * side + (mirrored % 2 == 0 ? 1 : -1) * (x - 400_000) - (atX - 400_000);
                    double north = 2 * j * side + (mirrored < 2 ? 1 : -1) * (y - 6_300_000) - (atY - 6_300_000);
                    sum += WellFunction.of((east * east + north * north) * S / (4 * T * day));
                }
            }
        }
        return sum / (4 * Math.PI * T);
    }

    /**
     * A spring that flows by its conductance gives less in proportion to head. Its limit allows 20 % less at the end than without
     * any bore; by hand 1 m of head is 10 m²/d times 1 m, so 10 / 86.4 L/s.
     */
    @Test
    void dischargesOfSpringsThatFlowDecide() throws Exception {
        Search search = search("largest_lift: 1000 m", "outlet: 105 m", "outlet: 80 m", "start:", """
                limits:
                  - name: the spring keeps its share
                    quantity: spring discharge
                    at: box spring
                    cause: proposed bores
                    compared_with: without them
                    when: ever
                    at_least: 80 %
                start:""");
        assertEquals(List.of(), search.result().uncounted());
        assertEquals("the spring keeps its share (box spring)", search.reason(search.middle()));
        expectUsedUp(search, "%", 20, DAYS);
        double[] undisturbed = search.base().recording().series().get(1).discharge();
        double allowed = 0.8 * undisturbed[undisturbed.length - 1] / 86.4;
        Search byDischarge = search(
                "largest_lift: 1000 m",
                "outlet: 105 m",
                "outlet: 80 m",
                "start:",
                """
                limits:
                  - {name: the spring flows, quantity: spring discharge, at: box spring, when: ever, at_least: ALLOWED L/s}
                start:""",
                "ALLOWED",
                String.valueOf(allowed));
        assertEquals("the spring flows (box spring)", byDischarge.reason(byDischarge.middle()));
        expectUsedUp(byDischarge, "L/s", 0.25 * allowed, DAYS);
        assertEquals(
                search.result().largestRate()[search.middle()],
                byDischarge.result().largestRate()[byDischarge.middle()],
                0.01 * search.result().largestRate()[search.middle()]);
    }

    /** The site takes all that is left, as the run with it is judged, but for the numerical error. */
    private static void expectUsedUp(Search search, String unit, double all, double day) {
        Site.Effect effect = search.result().sites().get(0).effects().get(0);
        SiteCheck check = SiteCheck.of(search.base(), search.result().asked(), search.result());
        assertEquals(1, check.lines().size());
        SiteCheck.Line line = check.lines().get(0);
        assertEquals(unit, line.unit());
        assertEquals(day, line.day(), 1);
        assertEquals(effect.effect(), line.predicted(), 1e-12);
        assertEquals(line.simulated(), line.predicted(), 0.01 * line.simulated());
        assertEquals(all, line.simulated(), 0.01 * all);
    }
}
