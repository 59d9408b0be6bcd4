package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.CasePlan;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A limit on drawdown beside another case of the document, with a spring that answers. The reference is the simulator: heads of that
 * case less heads with the rates found.
 */
class LimitsBesideCasesTest {

    private static final String DOCUMENT = """
            title: A field
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 4 yr}
            grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 10 km}, cell: 500 m}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-3, top: -400 m, bottom: -500 m}
            ground: 110 m
            boundaries:
              - {name: east, side: east, fixed_head: 100 m}
            springs:
              - {name: soak, at: [2.25 km, 5.25 km], outlet: 97 m, conductance: 100 m2/d}
            protected:
              - {name: point, at: [3.25 km, 5.25 km]}
            bores:
              - {name: one, at: [4.75 km, 5.25 km], group: proposed, screen_radius: 100 mm, rate: 1 L/s}
              - {name: two, at: [7.75 km, 5.25 km], group: proposed, screen_radius: 100 mm, rate: 1 L/s}
              - {name: old, at: [3.75 km, 7.75 km], group: existing, entitlement: 200 ML/yr, screen_radius: 100 mm, rate: 2 L/s}
            cases: [existing as used, existing at full entitlement, with the proposal]
            limits:
              - {name: point, quantity: drawdown, at: point, cause: everyone, compared_with: CASE, when: ever, at_most: 2 m}
            start: {steady: with existing bores}
            output: {grids: yearly, bores: monthly, report_after: [1 yr], head_tolerance: 0.5 mm}
            allocation:
              goal: largest yield
              largest_rate: 60 L/s
              efficiency: 60 %
            """;

    @TempDir
    private Path folder;

    private AllocationDocument document;

    private AllocationResult allocate(String other) throws Exception {
        document = AllocationDocument.of(folder, DOCUMENT.replace("CASE", other));
        return document.allocate();
    }

    /** Largest drawdown beside a case, on the days of the output (m). */
    private double largest(AllocationResult result, String other) throws Exception {
        RunPlan plan = document.plan();
        CasePlan beside = RunPlanner.cases(document.reading(), "test", 1).stream()
                .filter(one -> one.name().equals(other))
                .findFirst()
                .orElseThrow();
        int point = plan.description().stationIndex("point");
        StationSeries without = RunInMemory.stations(beside.plan()).get(point);
        double[] rates =
                result.bores().stream().mapToDouble(one -> one.rates().get(0)).toArray();
        StationSeries with = RunInMemory.stations(
                        new RatesInPlan(plan, result.blocks(), new int[] {0, 1}).with(rates, new double[0]))
                .get(point);
        double largest = 0;
        for (double day : without.days()) {
            largest = Math.max(largest, without.headAt(day) - with.headAt(day));
        }
        return largest;
    }

    /** At full entitlement head is lower to compare with, so that more may be taken. */
    @Test
    void drawdownBesideCasesIsKept() throws Exception {
        AllocationResult used = allocate("existing as used");
        assertEquals(List.of(), used.uncounted());
        assertEquals(2 - used.requirements().get(0).reserve(), largest(used, "existing as used"), 1.5e-3);
        AllocationResult entitled = allocate("existing at full entitlement");
        assertEquals(List.of(), entitled.uncounted());
        assertEquals(
                2 - entitled.requirements().get(0).reserve(),
                largest(entitled, "existing at full entitlement"),
                1.5e-3);
        assertTrue(entitled.yield() > 1.05 * used.yield(), used.yield() + ", " + entitled.yield());
    }

    /** There the bores that share take what is looked for, or what the document said: the simulator judges. */
    @Test
    void aCaseInWhichTheBoresTakeIsNoFixedReference() throws Exception {
        AllocationResult result = allocate("with the proposal");
        assertEquals(1, result.uncounted().size());
        assertEquals(
                "compares with another case in which bores that share take as well",
                result.uncounted().get(0).reason());
        assertEquals(List.of(), result.requirements());
    }
}
