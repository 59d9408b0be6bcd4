package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two bores and two springs that flow. The reference is the simulator, by a scan over how the total is shared: the effect is how much
 * lower heads at the springs are at the end than without the bores, on average over both springs alike.
 */
class LeastEffectOnSpringsTest {

    private static final String DOCUMENT = """
            title: A field
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 2 yr}
            grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 10 km}, cell: 500 m}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-4, top: -400 m, bottom: -500 m}
            ground: 110 m
            boundaries:
              - {name: east, side: east, fixed_head: 100 m}
            springs:
              - {name: soak, at: [2.25 km, 6.25 km], outlet: 90 m, conductance: 20 m2/d}
              - {name: pool, at: [6.25 km, 1.25 km], outlet: 90 m, conductance: 5 m2/d}
            bores:
              - {name: near soak, at: [3.75 km, 7.25 km], group: proposed, screen_radius: 100 mm, rate: 1 L/s}
              - {name: far, at: [8.75 km, 4.25 km], group: proposed, screen_radius: 100 mm, rate: 1 L/s}
            limits: LIMITS
            start: {steady: without bores}
            output: {grids: yearly, bores: monthly, report_after: [1 yr], head_tolerance: 0.1 mm}
            allocation:
              goal: least effect on springs
              total: 12 L/s
              largest_rate: 9 L/s
              efficiency: 60 %
            """;

    private static final double TOTAL = 12 * 86.4;
    private static final double MOST = 9 * 86.4;
    private static final double LITRE = 86.4;

    @TempDir
    private Path folder;

    private RunPlan plan;

    private AllocationResult allocate(String limits) throws Exception {
        AllocationDocument document = AllocationDocument.of(folder, DOCUMENT.replace("LIMITS", limits));
        plan = document.plan();
        AllocationResult result = document.allocate(plan);
        assertEquals(TOTAL, result.yield(), 1e-4 * TOTAL);
        assertEquals(List.of(), result.relaxed());
        return result;
    }

    private static double ofTheFirst(AllocationResult result) {
        return result.bores().get(0).rates().get(0);
    }

    /** Heads at both springs at the end (m above datum) if the first bore takes a rate and the second the rest of what is wanted. */
    private double[] heads(RateBlocks blocks, double first, double second) {
        double end = plan.description().endDay();
        List<StationSeries> series = RunInMemory.stations(
                new RatesInPlan(plan, blocks, new int[] {0, 1}).with(new double[] {first, second}, new double[] {end}));
        return new double[] {
            series.get(plan.description().stationIndex("soak")).headAt(end),
            series.get(plan.description().stationIndex("pool")).headAt(end)
        };
    }

    private double effect(RateBlocks blocks, double first) {
        double[] resting = heads(blocks, 0, 0);
        double[] heads = heads(blocks, first, TOTAL - first);
        return 0.5 * (resting[0] - heads[0] + resting[1] - heads[1]);
    }

    /** Of all shares that the largest rate allows, from 3 to 9 L/s of the first bore, none lowers the springs less. */
    @Test
    void noShareOfTheBoresLowersTheSpringsLess() throws Exception {
        AllocationResult result = allocate("[]");
        double one = ofTheFirst(result);
        double least = effect(result.blocks(), one);
        double worst = least;
        for (double share = TOTAL - MOST; share <= MOST + 1e-6; share += LITRE) {
            double effect = effect(result.blocks(), share);
            assertTrue(
                    effect >= least - 1e-3, share / LITRE + " L/s lower the springs by " + effect + " m, not " + least);
            worst = Math.max(worst, effect);
        }
        assertTrue(worst > 1.2 * least, "shares matter: " + least + " to " + worst);
    }

    /** A limit on the head where it does least holds it back, and its price is what the springs gain by a centimetre more. */
    @Test
    void thePriceIsWhatMoreOfALimitSparesTheSprings() throws Exception {
        AllocationResult free = allocate("[]");
        String favoured = ofTheFirst(free) > 0.5 * TOTAL ? "near soak" : "far";
        String limit = "[{name: floor, quantity: drawdown, at: " + favoured
                + ", cause: proposed bores, compared_with: without them, when: ever, at_most: %s m}]";
        double end = plan.description().endDay();
        int station = plan.description().stationIndex(favoured);
        double even = RunInMemory.stations(new RatesInPlan(plan, free.blocks(), new int[] {0, 1})
                                .with(new double[] {0, 0}, new double[] {end}))
                        .get(station)
                        .headAt(end)
                - RunInMemory.stations(new RatesInPlan(plan, free.blocks(), new int[] {0, 1})
                                .with(new double[] {0.5 * TOTAL, 0.5 * TOTAL}, new double[] {end}))
                        .get(station)
                        .headAt(end);
        AllocationResult held = allocate(limit.formatted(even));
        assertEquals(
                "m at the springs per m", held.priceUnit(held.requirements().get(0)));
        double before = effect(held.blocks(), ofTheFirst(held));
        double more = 0.1;
        AllocationResult given = allocate(limit.formatted(even + more));
        double gain = before - effect(given.blocks(), ofTheFirst(given));
        assertTrue(gain > 0.01, "large enough to judge: " + gain);
        assertEquals(gain / more, held.requirements().get(0).price(), 0.03 * gain / more);
        assertEquals(gain, held.requirements().get(0).gain(), 0.03 * gain);
    }
}
