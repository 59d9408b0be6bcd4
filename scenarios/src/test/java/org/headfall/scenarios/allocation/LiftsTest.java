package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Bores that bring up what pump or outlet allow. The reference is the simulator, which finds what such a bore gives: in a field that
 * is soon steady that is the largest rate that it can keep.
 */
class LiftsTest {

    private static final String PUMP =
            "pump: {curve: [[0 L/s, 60 m], [10 L/s, 50 m], [20 L/s, 20 m]], delivery_level: DELIVERY m}";

    private static final String DOCUMENT = """
            title: A field
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 4 yr}
            grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 10 km}, cell: 500 m}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-5, top: -400 m, bottom: -500 m}
            ground: 90 m
            boundaries:
              - {name: east, side: east, fixed_head: 100 m}
            bores:
              - {name: one, at: [4.75 km, 5.25 km], holder: Elder, group: proposed, screen_radius: 100 mm, well_loss: {quadratic: 5000 s2/m5}, BRINGS}
              - {name: two, at: [7.75 km, 5.25 km], holder: Younger, group: proposed, screen_radius: 100 mm, lowest_level: 95 m, rate: 0 L/s}
            start: {heads: 100 m}
            output: {grids: yearly, bores: yearly, report_after: [1 yr], head_tolerance: 1 mm}
            allocation:
              goal: largest yield
              bores: BORES
              MINIMUMS
              largest_rate: 100 L/s
              efficiency: 60 %
            """;

    @TempDir
    private Path folder;

    private RunPlan plan;

    private AllocationResult allocate(String brings, String bores, String minimums) throws Exception {
        AllocationDocument document = AllocationDocument.of(
                folder,
                DOCUMENT.replace("BRINGS", brings).replace("BORES", bores).replace("MINIMUMS", minimums));
        plan = document.plan();
        return document.allocate(plan);
    }

    private double dischargeAtTheEnd() {
        return RunInMemory.stations(plan).get(0).dischargeAt(plan.description().endDay());
    }

    @Test
    void aPumpLiftsNoMoreThanItsCurveAllows() throws Exception {
        AllocationResult result = allocate(PUMP.replace("DELIVERY", "130"), "[one]", "");
        double pumped = dischargeAtTheEnd();
        assertTrue(pumped > 8 * 86.4 && pumped < 17 * 86.4, "pumped " + pumped);
        assertEquals(pumped, result.bores().get(0).yield(), 2e-3 * pumped);
        assertTrue(result.worst() >= -1e-3, "least left " + result.worst());
        AllocationResult.Kept lift = result.requirements().get(0);
        assertEquals("what the bore can bring up (one)", lift.name());
        assertTrue(lift.price() > 0, lift.toString());
    }

    /** The curve ends at 20 L/s, where 20 m are left: 75 m of delivery need far less. */
    @Test
    void aPumpGivesNoMoreThanTheEndOfItsCurve() throws Exception {
        AllocationResult result = allocate(PUMP.replace("DELIVERY", "75"), "[one]", "");
        assertEquals(20 * 86.4, result.bores().get(0).yield(), 1e-6 * 20 * 86.4);
    }

    @Test
    void aBoreThatFlowsGivesWhatItsOutletAllows() throws Exception {
        AllocationResult result = allocate("outlet_level: 92 m, operation: free flow", "[one]", "");
        double flowing = dischargeAtTheEnd();
        assertTrue(flowing > 100, "flowing " + flowing);
        assertEquals(flowing, result.bores().get(0).yield(), 2e-3 * flowing);
    }

    /** A pump that does not even lift still water takes nothing and costs its neighbour nothing; what needs it is refused. */
    @Test
    void aPumpThatLiftsNothingIsLeftOut() throws Exception {
        AllocationResult alone = allocate("operation: off", "[two]", "");
        AllocationResult result = allocate(PUMP.replace("DELIVERY", "170"), "[one, two]", "");
        assertEquals(0, result.bores().get(0).yield(), 1e-9);
        AllocationResult.Kept lift = result.requirements().stream()
                .filter(one -> one.name().equals("what the bore can bring up (one)"))
                .findFirst()
                .orElseThrow();
        // 170 m of delivery less the 60 m that the pump lifts at most.
        assertTrue(lift.remark().contains("its pump takes a head of 110.00 m"), lift.remark());
        assertTrue(Double.isNaN(lift.simulated()) && Double.isNaN(lift.predicted()), lift.toString());
        assertEquals(alone.yield(), result.yield(), 1e-4 * alone.yield());
        ContradictionException refused = assertThrows(
                ContradictionException.class,
                () -> allocate(
                        PUMP.replace("DELIVERY", "130"),
                        "[one, two]",
                        "minimums: [{holder: Elder, at_least: 18 L/s}]"));
        assertTrue(String.valueOf(refused.getMessage()).contains("minimum of Elder"), refused.getMessage());
    }

    /** What a bore brings up by one pump after another are two requirements, told apart by their dates. */
    @Test
    void pumpsOfOneBoreAreToldApart() throws Exception {
        String pump = PUMP.replace("DELIVERY", "90");
        AllocationResult result = allocate(
                pump + ", changes: [{from: 2028-07-01, " + pump.replace("10 L/s, 50 m", "10 L/s, 45 m") + "}]",
                "[one]",
                "");
        assertEquals(
                List.of(
                        "what the bore can bring up (one), 2026-08-01 to 2028-07-01",
                        "what the bore can bring up (one), 2028-08-01 to 2030-07-01"),
                result.requirements().stream().map(AllocationResult.Kept::name).toList());
    }
}
