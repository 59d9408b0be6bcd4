package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Prices of limits where a spring and a free-flowing bore answer what is taken. The reference is another allocation, under a
 * limit that allows a little more.
 */
class AnsweredPricesTest {

    private static final double MEGALITRES_PER_YEAR = 365.25 / 1000;

    @TempDir
    private Path folder;

    private AllocationDocument document;

    @BeforeEach
    void copy() throws IOException {
        document = AllocationDocument.ofExample(folder, "6 yr", "1 yr, 5 yr", "3 yr");
    }

    /** The same with a limit that allows more. */
    private AllocationResult allocate(String limit, double allowed, double more) throws Exception {
        String allows = "    at_most: %s m%n    text: %s".formatted("%s", limit);
        document.replace(allows.formatted(allowed), allows.formatted(allowed + more));
        AllocationResult result = document.allocate();
        document.replace(allows.formatted(allowed + more), allows.formatted(allowed));
        return result;
    }

    private static AllocationResult.Kept dearest(AllocationResult result) {
        return result.requirements().stream()
                .max(Comparator.comparingDouble(AllocationResult.Kept::price))
                .orElseThrow();
    }

    private static double megalitres(AllocationResult result) {
        return result.yield() * MEGALITRES_PER_YEAR;
    }

    private static double megawattHours(AllocationResult result) {
        return result.energy() * MEGALITRES_PER_YEAR;
    }

    private void assertPriced(String place, String limit, double allowed) throws Exception {
        AllocationResult result = document.allocate();
        AllocationResult.Kept one = dearest(result);
        assertTrue(one.name().contains(place), one.toString());
        assertTrue(result.worst() >= -1e-3, "least left " + result.worst());
        for (double more : new double[] {0.02, 0.1}) {
            double gain = megalitres(allocate(limit, allowed, more)) - megalitres(result);
            assertEquals(gain / more, one.price(), 0.03 * gain / more, "by " + more);
            if (more == AllocationResult.STEP) {
                assertEquals(gain, one.gain(), 0.03 * gain);
            }
        }
    }

    /** At the spring itself; without what springs and bores give back the price came out 24 % too low. */
    @Test
    void priceOfHeadAtASpringThatFlows() throws Exception {
        document.replace("at_most: 3 m", "at_most: 3.0 m");
        assertPriced("Brolga Springs", "Taking by the town lowers the head at the springs", 3.0);
    }

    /** Beside the bore that flows by itself; without what is given back 25 % too low. */
    @Test
    void priceOfHeadBesideABoreThatFlows() throws Exception {
        document.replace("at_most: 3 m", "at_most: 20 m");
        document.replace("at_most: 9 m", "at_most: 1.0 m");
        assertPriced("Saltbush homestead", "Taking by the town lowers the head at the neighbour", 1.0);
    }

    /** Least energy for a total, between what the total needs of the limit, 1.17 m, and where the limit is of no account, 1.36 m. */
    @Test
    void priceInEnergy() throws Exception {
        document.replace("at_most: 3 m", "at_most: 1.25 m");
        document.replace("goal: largest yield", "goal: least energy\n  total: 14 L/s");
        AllocationResult result = document.allocate();
        AllocationResult.Kept one = dearest(result);
        assertEquals(List.of(), result.relaxed());
        assertTrue(result.worst() >= -1e-3, "least left " + result.worst());
        String limit = "Taking by the town lowers the head at the springs";
        double half = 0.03;
        double saved = megawattHours(allocate(limit, 1.25, -half)) - megawattHours(allocate(limit, 1.25, half));
        assertEquals(saved / (2 * half), one.price(), 0.05 * one.price());
    }

    /** What one bore gives up another may take with the same head at a place in the end: by the simulator, to 1 %. */
    @Test
    void exchangesLeaveHeadAsItWas() throws Exception {
        AllocationResult result = document.allocate();
        AllocationResult.Exchange exchange = result.exchanges().stream()
                .filter(one ->
                        one.place().equals("Saltbush homestead") && one.from().equals("Town 1"))
                .findFirst()
                .orElseThrow();
        double less = 140;
        double before = headAtTheEnd(result, exchange.place(), 0, 0);
        double after = headAtTheEnd(result, exchange.place(), -less, 0);
        double exchanged = headAtTheEnd(result, exchange.place(), -less, less * exchange.rate());
        assertTrue(after - before > 0.05, "the effect is large enough to judge: " + (after - before));
        assertEquals(before, exchanged, 0.01 * (after - before) + 2e-4);
    }

    private double headAtTheEnd(AllocationResult result, String place, double... more) throws Exception {
        RunPlan plan = document.plan();
        int groups = result.blocks().groups();
        double[] rates = new double[more.length * groups];
        int[] bores = new int[more.length];
        for (int b = 0; b < more.length; b++) {
            bores[b] = plan.description().stationIndex(result.bores().get(b).name());
            for (int group = 0; group < groups; group++) {
                rates[b * groups + group] = result.bores().get(b).rates().get(group) + more[b];
            }
        }
        RunPlan changed = new RatesInPlan(plan, result.blocks(), bores).with(rates, new double[0]);
        return RunInMemory.stations(changed)
                .get(plan.description().stationIndex(place))
                .headAt(plan.description().endDay());
    }
}
