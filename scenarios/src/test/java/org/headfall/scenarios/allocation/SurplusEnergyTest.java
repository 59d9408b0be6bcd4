package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Two bores a kilometre apart in a field that is soon steady, in one or both of which water stands above the level it is delivered
 * to. The reference is the simulator: rate times lift, none where the level that it finds is above, over all shares of the
 * total that are a hundredth apart.
 */
class SurplusEnergyTest {

    private static final String DOCUMENT = """
            title: A field
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 2 yr}
            grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 10 km}, cell: 500 m}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-5, top: -900 m, bottom: -1000 m}
            ground: 95 m
            boundaries:
              - {name: east, side: east, fixed_head: 100 m}
            bores:
              - {name: one, at: [6.25 km, 4.75 km], group: proposed, screen_radius: 100 mm, rate: 1 L/s, ONE}
              - {name: two, at: [6.25 km, 5.75 km], group: proposed, screen_radius: 100 mm, rate: 1 L/s, ground_level: GROUND m, LOSS}
            limits: [LIMIT]
            start: {heads: 100 m}
            output: {grids: yearly, bores: yearly, report_after: [1 yr], head_tolerance: 0.5 mm}
            allocation:
              goal: least energy
              total: TOTAL L/s
              largest_rate: 30 L/s
              efficiency: 60 %
            """;

    private static final int SHARES = 100;

    @TempDir
    private Path folder;

    private RunPlan plan;
    private String groundOfOne = "ground_level: 95 m";

    private AllocationResult allocate(double ground, double total, String loss, String limit) throws Exception {
        AllocationDocument document = AllocationDocument.of(
                folder,
                DOCUMENT.replace("GROUND", String.valueOf(ground))
                        .replace("TOTAL", String.valueOf(total))
                        .replace("LOSS", loss)
                        .replace("ONE", groundOfOne)
                        .replace("LIMIT", limit));
        plan = document.plan();
        AllocationResult result = document.allocate(plan);
        assertTrue(result.worst() >= -1e-3, "least left " + result.worst());
        assertEquals(List.of(), result.relaxed());
        return result;
    }

    /** Rate times lift at the end, added up (m⁴/d). */
    private double lifted(RateBlocks blocks, double ground, double one, double total) {
        double end = plan.description().endDay();
        double[] rates = {one, total - one};
        double[] delivery = {95, ground};
        List<StationSeries> series = RunInMemory.stations(
                new RatesInPlan(plan, blocks, new int[] {0, 1}).with(rates, new double[] {0, end - 0.5, end}));
        double sum = 0;
        for (int b = 0; b < 2; b++) {
            sum += rates[b] * Math.max(0, delivery[b] - series.get(b).levelInBoreAt(end - 0.5));
        }
        return sum;
    }

    /**
     * Water stands 5 m above the ground of the first bore, and of the second 5 m as well, 1 m, or 5 or 35 m below. Of all of 4 L/s none
     * need be lifted if they are shared; of 8 L/s there is a kink where the first begins to lift.
     */
    @ParameterizedTest
    @CsvSource({
        "95, 20, skin: 0",
        "99, 8, skin: 0",
        "99, 20, skin: 0",
        "99, 20, 'well_loss: {quadratic: 20000 s2/m5}'",
        "105, 12, skin: 0",
        "135, 20, skin: 0",
        "95, 4, skin: 0"
    })
    void noShareOfTheTotalTakesLess(double ground, double total, String loss) throws Exception {
        AllocationResult result = allocate(ground, total, loss, "");
        double taken = total * 86.4;
        double one = result.bores().get(0).rates().get(0);
        assertEquals(taken, one + result.bores().get(1).rates().get(0), 1e-4 * taken);
        double found = lifted(result.blocks(), ground, one, taken);
        double least = Double.POSITIVE_INFINITY;
        int at = 0;
        for (int share = 0; share <= SHARES; share++) {
            double lifted = lifted(result.blocks(), ground, share * taken / SHARES, taken);
            if (lifted < least) {
                least = lifted;
                at = share;
            }
        }
        assertTrue(
                found <= 1.001 * least + 1,
                "found " + found + " with a share of " + one / taken + ", least " + least + " with " + at + " %");
    }

    /** What a little more of a limit saves is what its price says; the limit is a metre below the level where lifting begins. */
    @Test
    void aPriceIsWhatALittleMoreSaves() throws Exception {
        String limit = "{name: floor, quantity: floor level, at: one, when: ever, at_least: %s m}";
        double step = 0.05;
        AllocationResult result = allocate(105, 12, "skin: 0", limit.formatted(94.0));
        AllocationResult.Kept floor = result.requirements().get(0);
        assertTrue(floor.price() > 0, floor.toString());
        double saved = allocate(105, 12, "skin: 0", limit.formatted(94.0 + step))
                        .energy()
                - allocate(105, 12, "skin: 0", limit.formatted(94.0 - step)).energy();
        double perMetre = saved * 0.36525 / (2 * step);
        assertEquals(perMetre, floor.price(), 0.02 * perMetre);
    }

    /**
     * Water stands just below the ground of the first bore while that rests, and above it with a tenth of a metre more of the limit,
     * which lets the second take less: what that gains is the difference of two allocations all the same.
     */
    @Test
    void aGainIsADifferenceOfEnergiesWhereWaterBeginsToStandAbove() throws Exception {
        String limit = "{name: floor, quantity: floor level, at: one, when: ever, at_least: %s m}";
        String loss = "well_loss: {quadratic: 20000 s2/m5}";
        AllocationResult first = allocate(115, 12, loss, limit.formatted(93.0));
        double second = first.bores().get(1).rates().get(0);
        double end = plan.description().endDay();
        double resting = RunInMemory.stations(new RatesInPlan(plan, first.blocks(), new int[] {0, 1})
                        .with(new double[] {0, second}, new double[] {0, end - 0.5, end}))
                .get(0)
                .levelInBoreAt(end - 0.5);
        groundOfOne = String.format(Locale.ROOT, "ground_level: %.4f m", resting + 0.01);
        AllocationResult result = allocate(115, 12, loss, limit.formatted(93.0));
        AllocationResult.Kept floor = result.requirements().get(0);
        assertEquals(second, result.bores().get(1).rates().get(0), 0.1);
        double saved =
                result.energy() - allocate(115, 12, loss, limit.formatted(92.9)).energy();
        assertEquals(saved * 0.36525, floor.gain(), 0.02 * saved * 0.36525);
        assertEquals(floor.gain(), 0.1 * floor.price(), 0.1 * floor.gain());
    }
}
