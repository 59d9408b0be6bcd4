package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A neighbour's bore flows by itself and must go on doing so. The reference is the simulator, and another allocation. */
class FlowLimitsTest {

    private static final String DOCUMENT = """
            title: A field
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 4 yr}
            grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 10 km}, cell: 500 m}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-3, top: -400 m, bottom: -500 m}
            ground: 95 m
            boundaries:
              - {name: east, side: east, fixed_head: 100 m}
            bores:
              - {name: one, at: [4.75 km, 5.25 km], group: proposed, screen_radius: 100 mm, BRINGS}
              - {name: two, at: [7.75 km, 5.25 km], group: proposed, screen_radius: 100 mm, rate: 1 L/s}
              - {name: old, at: [2.25 km, 6.25 km], group: existing, screen_radius: 75 mm, outlet_level: 96 m, well_loss: LOSS, operation: free flow}
            limits:
              - {name: flows, quantity: flow, at: PLACE, when: ever, at_least: LEAST L/s}
            start: {steady: with existing bores}
            output: {grids: yearly, bores: monthly, report_after: [1 yr], head_tolerance: 0.5 mm}
            allocation:
              goal: largest yield
              TAKING
              largest_rate: 100 L/s
              efficiency: 60 %
            """;

    @TempDir
    private Path folder;

    private RunPlan plan;

    private AllocationResult allocate(String loss, String at, String brings, double least) throws Exception {
        return allocate(loss, at, brings, least, "");
    }

    private AllocationResult allocate(String loss, String at, String brings, double least, String taking)
            throws Exception {
        AllocationDocument document = AllocationDocument.of(
                folder,
                DOCUMENT.replace("LOSS", loss)
                        .replace("PLACE", at)
                        .replace("BRINGS", brings)
                        .replace("LEAST", String.valueOf(least))
                        .replace("TAKING", taking));
        plan = document.plan();
        return document.allocate(plan);
    }

    private static AllocationResult.Kept flow(AllocationResult result) {
        return result.requirements().stream()
                .filter(one -> one.name().startsWith("flows"))
                .findFirst()
                .orElseThrow();
    }

    /** Least flow of a bore with the rates found, on every fifth day (L/s). */
    private double least(AllocationResult result, String bore) {
        double[] rates =
                result.bores().stream().mapToDouble(one -> one.rates().get(0)).toArray();
        double[] days = IntStream.range(0, 293).mapToDouble(i -> 5.0 * i).toArray();
        return Arrays.stream(RunInMemory.stations(
                                        new RatesInPlan(plan, result.blocks(), new int[] {0, 1}).with(rates, days))
                                .get(plan.description().stationIndex(bore))
                                .discharge())
                        .min()
                        .orElseThrow()
                / 86.4;
    }

    /** The bore gives some 2.5 L/s at rest, and nothing at the largest rates. A bore without losses holds head at its wall. */
    @ParameterizedTest
    @ValueSource(strings = {"{quadratic: 20000 s2/m5}", "{linear: 0 s/m2}"})
    void theBoreKeepsItsLeastFlow(String loss) throws Exception {
        AllocationResult result = allocate(loss, "old", "rate: 1 L/s", 1.0);
        AllocationResult.Kept flows = flow(result);
        assertEquals(List.of(), result.uncounted());
        assertEquals(List.of(), result.relaxed());
        assertEquals(1.0 + flows.reserve(), least(result, "old"), 2e-3);
        assertEquals(flows.reserve(), flows.simulated(), 2e-3);
        assertTrue(result.yield() > 300, "yield " + result.yield());
        // More than what the numerical error that is kept free differs by from one allocation to the next.
        double step = 0.1;
        AllocationResult less = allocate(loss, "old", "rate: 1 L/s", 1 - step);
        AllocationResult more = allocate(loss, "old", "rate: 1 L/s", 1 + step);
        double gain = (less.yield() - more.yield())
                * 0.36525
                / (2 * step + flow(more).reserve() - flow(less).reserve());
        assertEquals(gain, flows.price(), 0.02 * gain);
        assertEquals("ML/yr per L/s", result.priceUnit(flows));
    }

    /** More than it gives at rest: what lacks is told as flow, and everything else rests. */
    @Test
    void aFlowThatNeverWasGivesWayByWhatLacks() throws Exception {
        AllocationResult result = allocate("{quadratic: 20000 s2/m5}", "old", "rate: 1 L/s", 10);
        assertEquals(0, result.yield(), 1.0);
        assertEquals(1, result.relaxed().size());
        double resting = least(result, "old");
        assertTrue(resting > 1 && resting < 9, "at rest " + resting);
        AllocationResult.Relaxed flows = result.relaxed().get(0);
        assertEquals(resting - flow(result).reserve(), flows.needed(), 0.01);
        assertEquals(10 - flows.needed(), flows.amount(), 1e-9);
    }

    /** Of a bore whose rate is looked for the limit is on the rate. */
    @Test
    void aBoreThatSharesIsGivenWhatItsLimitWants() throws Exception {
        AllocationResult result = allocate("{linear: 0 s/m2}", "one", "outlet_level: 96 m, operation: free flow", 2.0);
        assertEquals(List.of(), result.uncounted());
        assertEquals(List.of(), result.relaxed());
        assertTrue(
                result.bores().get(0).rates().get(0) >= 2 * 86.4, result.bores().toString());
    }

    /** While nothing is taken no limit wants a rate: in the other half of the year, or in years after those of the taking. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "seasons: [{from: 1 October, to: 31 March}]",
                "for: 2 yr",
            })
    void itsLimitHoldsWhileItMayTake(String taking) throws Exception {
        AllocationResult result =
                allocate("{linear: 0 s/m2}", "one", "outlet_level: 96 m, operation: free flow", 2.0, taking);
        assertEquals(List.of(), result.uncounted());
        assertEquals(List.of(), result.relaxed());
        AllocationResult.Kept flows = flow(result);
        assertEquals(0, flows.simulated() - flows.reserve(), 2e-3);
        assertEquals(
                (2.0 + flows.reserve()) * 86.4, result.bores().get(0).rates().get(0), 0.2);
        assertTrue(flows.price() > 0, flows.toString());
    }

    /**
     * A point a kilometre away may fall by next to nothing, which contradicts a flow of 2 L/s. There a litre a second is worth some 1.5 m, in the bore
     * itself 7 m (Theis and image bores): the sum in metres is least where the limit at the point gives way.
     */
    @Test
    void aFlowGivesWayByTheHeadThatItTakes() throws Exception {
        AllocationDocument document = AllocationDocument.of(
                folder,
                DOCUMENT.replace(
                                "transmissivity: 200 m2/d, storativity: 1e-3",
                                "transmissivity: 20 m2/d, storativity: 1e-5")
                        .replace("bores:\n", "protected:\n  - {name: near, at: [5.75 km, 5.25 km]}\nbores:\n")
                        .replace(
                                "limits:\n",
                                "limits:\n  - {name: near, quantity: drawdown, at: near, cause: proposed bores, compared_with: without them, when: ever, at_most: 10 cm}\n")
                        .replace("LOSS", "{linear: 0 s/m2}")
                        .replace("PLACE", "one")
                        .replace("BRINGS", "outlet_level: 60 m, operation: free flow")
                        .replace("LEAST", "2")
                        .replace("TAKING", ""));
        plan = document.plan();
        AllocationResult result = document.allocate(plan);
        assertEquals(
                List.of("near (near)"),
                result.relaxed().stream().map(AllocationResult.Relaxed::name).toList());
        assertTrue(result.relaxed().get(0).amount() > 2, result.relaxed().toString());
    }
}
