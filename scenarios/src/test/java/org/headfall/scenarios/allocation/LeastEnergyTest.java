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
 * Two bores that mirror each other in a field that is soon steady, but for one difference. The reference is the simulator: energy
 * is rate times lift from the level that it finds in each bore, a parabola over how the total is shared, whose lowest point the
 * allocation must be.
 */
class LeastEnergyTest {

    private static final String DOCUMENT = """
            title: A field
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 2 yr}
            grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 10 km}, cell: 500 m}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-5, top: -900 m, bottom: -1000 m}
            ground: 110 m
            boundaries:
              - {name: east, side: east, fixed_head: 100 m}
            bores:
              - {name: one, at: [6.25 km, 2.75 km], group: proposed, screen_radius: 100 mm, rate: 1 L/s, screen: {top: -900 m, bottom: -1000 m}, water_temperature: 20 degC}
              - {name: two, at: [6.25 km, 7.25 km], group: proposed, screen_radius: 100 mm, rate: 1 L/s, screen: {top: -900 m, bottom: -1000 m}, TWO}
            start: {heads: 100 m}
            output: {grids: yearly, bores: yearly, report_after: [1 yr], head_tolerance: 0.5 mm}
            allocation:
              goal: least energy
              total: 20 L/s
              largest_rate: 30 L/s
              delivery_head: 70 m
              efficiency: 60 %
            """;

    private static final double TOTAL = 20 * 86.4;
    private static final double DELIVERY = 110 + 70;

    @TempDir
    private Path folder;

    private RunPlan plan;

    private AllocationResult allocate(String two) throws Exception {
        AllocationDocument document = AllocationDocument.of(folder, DOCUMENT.replace("TWO", two));
        plan = document.plan();
        return document.allocate(plan);
    }

    /** Rate times lift at the end, added up (m⁴/d). */
    private double lifted(RateBlocks blocks, double one) {
        double end = plan.description().endDay();
        double[] rates = {one, TOTAL - one};
        List<StationSeries> series = RunInMemory.stations(
                new RatesInPlan(plan, blocks, new int[] {0, 1}).with(rates, new double[] {0, end - 0.5, end}));
        double sum = 0;
        for (int b = 0; b < 2; b++) {
            sum += rates[b] * (DELIVERY - series.get(b).levelInBoreAt(end - 0.5));
        }
        return sum;
    }

    /** Rate of the first bore at the lowest point of the parabola through three shares. */
    private double lowest(RateBlocks blocks, double middle) {
        double step = 0.1 * TOTAL;
        double less = lifted(blocks, middle - step);
        double more = lifted(blocks, middle + step);
        double bend = less - 2 * lifted(blocks, middle) + more;
        assertTrue(bend > 0, "bend " + bend);
        return middle + step * (less - more) / (2 * bend);
    }

    private double rateOfTheFirst(String two) throws Exception {
        AllocationResult result = allocate(two);
        double one = result.bores().get(0).rates().get(0);
        assertEquals(TOTAL, one + result.bores().get(1).rates().get(0), 1e-4 * TOTAL);
        assertEquals(lowest(result.blocks(), one), one, 5e-3 * TOTAL);
        return one;
    }

    @Test
    void boresThatAreAlikeShareEvenly() throws Exception {
        assertEquals(0.5 * TOTAL, rateOfTheFirst("water_temperature: 20 degC"), 5e-3 * TOTAL);
    }

    /** A skin of 10 loses 8 mm by each m³/d: of the total, it moves far more than a twentieth to the other bore. */
    @Test
    void aBoreWithSkinTakesLess() throws Exception {
        double one = rateOfTheFirst("skin: 10, water_temperature: 20 degC");
        assertTrue(one > 0.55 * TOTAL, "one takes " + one);
    }

    /** Hot water stands some 25 m higher in its bore of 1 km, so that less is lifted. */
    @Test
    void aBoreWithHotWaterTakesMore() throws Exception {
        double one = rateOfTheFirst("water_temperature: 70 degC");
        assertTrue(one < 0.45 * TOTAL, "one takes " + one);
    }
}
