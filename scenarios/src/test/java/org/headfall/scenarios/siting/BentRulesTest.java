package org.headfall.scenarios.siting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.response.EffectFields;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Effects at and beside places that give less as head falls, held against the simulator with a bore in random cells. */
class BentRulesTest {

    private static final long SEED = 5;
    private static final int CELLS = 20;

    private static final String DOCUMENT = """
            title: A bore that flows beside a spring
            datum: metres above an invented datum
            crs: EPSG:32743
            period: {from: 2026-07-01, for: 6 yr}
            grid: {extent: {west: 400 km, east: 420 km, south: 6300 km, north: 6320 km}, cell: 1 km}
            aquifer: {transmissivity: 200 m2/d, storativity: 5e-4, top: -400 m, bottom: -500 m}
            ground: 110 m
            boundaries:
              - {name: ranges, side: east, fixed_head: 120 m}
            springs:
              - {name: spring, at: [405.5 km, 6314.5 km], outlet: 112 m, conductance: 20 m2/d}
            protected:
              - {name: homestead, at: [407.5 km, 6307.5 km]}
            bores:
              - {name: flowing, at: [410.5 km, 6310.5 km], group: existing, screen_radius: 75 mm, outlet_level: 111 m,
                 well_loss: {quadratic: 40000 s2/m5}, operation: free flow}
            limits:
              LIMITS
            start: {steady: with existing bores}
            output: {grids: yearly, bores: monthly, report_after: [1 yr], head_tolerance: 0.2 mm}
            siting: {screen_radius: 100 mm, largest_rate: 30 L/s, efficiency: 60 %}
            """;

    private static final String LIMITS = """
              - {name: drawdown, quantity: drawdown, at: [flowing, homestead, spring], cause: everyone, compared_with: the start,
                 when: ever, at_most: 30 m}
              - {name: since, quantity: drawdown, at: [flowing, homestead, spring], cause: everyone, compared_with: 2027-10-01,
                 when: after 4 yr, at_most: 30 m}
              - {name: since years, quantity: drawdown, at: [flowing, homestead], cause: everyone,
                 compared_with: mean of 2027 to 2028, when: after 4 yr, at_most: 30 m}
              - {name: slow, quantity: decline rate, at: [flowing, homestead, spring], cause: everyone, when: ever, at_most: 20 m/yr}
              - {name: slow over years, quantity: decline rate, over: 3 yr, at: [flowing, homestead], cause: everyone, when: ever,
                 at_most: 20 m/yr}
            """;

    @TempDir
    private Path folder;

    private SitingSpecification siting;

    private RunInMemory base(String limits) throws Exception {
        Path document = folder.resolve("scenario.yaml");
        Files.writeString(document, DOCUMENT.replace("LIMITS", limits.strip()));
        ScenarioReading reading = ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT);
        siting = reading.orThrow().planning().siting().orElseThrow();
        RunPlan plan = RunPlanner.plan(reading, "test", 1);
        return RunInMemory.of(
                plan,
                PlanningResponses.of(plan, folder).orComputed(plan, (stage, fraction) -> {}),
                (stage, fraction) -> {});
    }

    private CountedLimits limits(RunInMemory base) {
        return CountedLimits.of(
                base, siting, new EffectFields.NewBore(siting.screenRadius(), 10, siting.days()), new Ruling());
    }

    private NearField bore(RunInMemory base, int cell) {
        RectilinearGrid grid = base.plan().description().grid();
        return base.plan().problem().nearField(grid.centreX(cell), grid.centreY(cell), siting.screenRadius());
    }

    /** Series of the stations of the document, run with a bore dropped into a cell. */
    private List<StationSeries> with(RunInMemory base, int cell, double rate) {
        RunDescription run = base.plan().description();
        Site site = new Site(
                1, cell, run.grid().centreX(cell), run.grid().centreY(cell), rate, rate, "", 0, 0, 0, List.of());
        double[] none = new double[0];
        SitingResult alone = new SitingResult(
                run, none, new int[0], List.of(), none, none, 0, List.of(site), siting, "", List.of(), List.of());
        return SiteCheck.ofTheBase(base, SiteCheck.run(base, siting, alone).series());
    }

    private double lost(RunInMemory base, List<StationSeries> with, int station) {
        double before = base.recording().series().get(station).dischargeAt(siting.days());
        return 1 - with.get(station).dischargeAt(siting.days()) / before;
    }

    /** The bar: 1 % or 1 mm. */
    private static double allowed(double effect) {
        return Math.max(1e-3, 0.01 * Math.abs(effect));
    }

    /** Effects on falls of head, falls since a date or years, and rates, while the bore loses up to 96 % and the spring stops. */
    @Test
    void effectsOfBoresInRandomCellsAreThoseOfTheSimulator() throws Exception {
        RunInMemory base = base(LIMITS);
        CountedLimits limits = limits(base);
        Random random = new Random(SEED);
        double[] largestLoss = new double[2];
        for (int trial = 0; trial < CELLS; trial++) {
            int cell = random.nextInt(base.plan().description().grid().cellCount());
            double rate = 200 + 5000 * random.nextDouble();
            NearField bore = bore(base, cell);
            limits.use(bore, rate);
            List<Site.Effect> effects = limits.effects(bore, rate);
            limits.use(bore, -rate);
            List<StationSeries> with = with(base, cell, rate);
            for (int station = 0; station < largestLoss.length; station++) {
                largestLoss[station] = Math.max(largestLoss[station], lost(base, with, station));
            }
            assertEquals(base.plan().limits().size(), effects.size());
            for (Limit limit : base.plan().limits()) {
                Site.Effect effect = effects.stream()
                        .filter(one -> one.limit().equals(limit.nameAndPlace()))
                        .findFirst()
                        .orElseThrow();
                double simulated = SiteCheck.effect(base, limit, with, effect.day());
                assertEquals(
                        simulated,
                        effect.effect(),
                        allowed(simulated),
                        limit.nameAndPlace() + ", cell " + cell + ", day " + effect.day());
            }
        }
        assertTrue(largestLoss[0] > 0.9, "the bore loses " + largestLoss[0]);
        assertEquals(1, largestLoss[1], 1e-9, "the spring stops");
    }

    /** The largest rate uses up just what is left, to the same bar, where the bore has lost more than two fifths; also where a larger one would keep it. */
    @ParameterizedTest
    @CsvSource({
        "'quantity: drawdown, compared_with: the start, at_most: 1.7 m'",
        "'quantity: drawdown, compared_with: 2027-10-01, at_most: 0.2 m'",
        "'quantity: decline rate, at_most: 1.5 m/yr'"
    })
    void theLargestRateUsesUpWhatIsLeft(String limited) throws Exception {
        RunInMemory base = base("  - {name: limit, " + limited + ", at: flowing, cause: everyone, when: ever}");
        Limit limit = base.plan().limits().get(0);
        CountedLimits limits = limits(base);
        int cell = base.plan().description().grid().locate(414_500, 6_312_500);
        double rate = limits.most(bore(base, cell), 20_000, 0).rate();
        assertTrue(rate < 20_000);
        List<StationSeries> with = with(base, cell, rate);
        double least =
                Arrays.stream(base.marginsIn(limit, with).margins()).min().orElseThrow();
        assertTrue(lost(base, with, 0) > 0.4, "the bore loses " + lost(base, with, 0));
        assertEquals(
                base.margins(limit).error(), least, allowed(limit.quantity().allowed()));
        assertEquals(rate, limits.most(bore(base, cell), 5000, 0).rate(), 1e-3);
        RateBounds bounds = new RateBounds(base.plan().description().grid().cellCount(), 20_000);
        limits.lower(bounds);
        assertEquals(rate, bounds.rate()[cell], 0.005 * rate);
    }
}
