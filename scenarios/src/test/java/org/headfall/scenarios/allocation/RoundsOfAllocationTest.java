package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.solver.response.StationResponses;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A spring that gives back much of what is taken until it stops: the second round takes too much, as the slope at the first
 * promises more of it. The reference is the simulator, run with the rates found and with none.
 */
class RoundsOfAllocationTest {

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
              - {name: soak, at: [2.25 km, 5.25 km], outlet: 94 m, conductance: 400 m2/d}
            bores:
              - {name: one, at: [4.75 km, 5.25 km], group: proposed, screen_radius: 100 mm, rate: 1 L/s}
            limits:
              - {name: keeps, quantity: drawdown, at: soak, cause: proposed bores, compared_with: without them, when: ever, at_most: 3 m}
            start: {steady: with existing bores}
            output: {grids: yearly, bores: monthly, report_after: [1 yr], head_tolerance: 0.5 mm, solve: SOLVE}
            allocation:
              goal: largest yield
              largest_rate: 100 L/s
              efficiency: 60 %
            """;

    private static final String LIMIT = "keeps (soak)";

    @TempDir
    private Path folder;

    private RunPlan plan;

    private AllocationResult allocate(String solve, int mostRounds) throws Exception {
        AllocationDocument document = AllocationDocument.of(folder, DOCUMENT.replace("SOLVE", solve));
        plan = document.plan();
        return document.allocate(plan, mostRounds);
    }

    private RunPlan with(AllocationResult result, double rate) {
        return new RatesInPlan(plan, result.blocks(), new int[] {0}).with(new double[] {rate}, new double[0]);
    }

    private StationSeries soak(AllocationResult result, double rate) {
        return RunInMemory.stations(with(result, rate)).get(plan.description().stationIndex("soak"));
    }

    private static double rate(AllocationResult result) {
        return result.bores().get(0).rates().get(0);
    }

    /** Drawdown at the end by two runs of the simulator (m): rates are steady, so it is largest then. */
    private double drawdown(AllocationResult result) {
        double end = plan.description().endDay();
        return soak(result, 0).headAt(end) - soak(result, rate(result)).headAt(end);
    }

    @Test
    void whatIsNotKeptWhenTheRoundsEndIsNamed() throws Exception {
        AllocationResult ended = allocate("by steps", 2);
        assertEquals(2, ended.rounds().bySimulator());
        assertFalse(ended.rounds().settled());
        assertEquals(List.of(LIMIT), ended.rounds().notKept());
        double drawdown = drawdown(ended);
        assertTrue(drawdown > 3.1, "drawdown " + drawdown);
        assertEquals(3 - drawdown, ended.requirements().get(0).simulated(), 2e-3);
    }

    @Test
    void moreRoundsSettleAndKeepAll() throws Exception {
        AllocationResult settled = allocate("by steps", 10);
        assertTrue(settled.rounds().settled() && settled.rounds().bySimulator() < 10, settled.toString());
        assertEquals(List.of(), settled.rounds().notKept());
        double drawdown = drawdown(settled);
        assertEquals(3, drawdown, 5e-3);
        assertTrue(drawdown < 3, "drawdown " + drawdown);
    }

    /** The one round leaves the spring what it gives back: all is kept, and much more could be taken. */
    @Test
    void ratesThatKeepAllMayNotHaveSettled() throws Exception {
        AllocationResult first = allocate("automatic", 1);
        assertFalse(first.rounds().settled());
        assertEquals(List.of(), first.rounds().notKept());
        assertTrue(drawdown(first) < 2, "drawdown " + drawdown(first));
        assertTrue(
                AllocationWords.unfinished(first.rounds()).get(0).startsWith("Rates have not settled"),
                first.rounds().toString());
    }

    /** Rates change after the first run by the simulator; the difference that is told is of those that are given. */
    @Test
    void superpositionAndSimulatorAreComparedAtTheRatesGiven() throws Exception {
        AllocationResult changed = allocate("automatic", 2);
        assertEquals(2, changed.rounds().bySimulator(), changed.rounds().toString());
        assertEquals(3, changed.rounds().bySuperposition(), changed.rounds().toString());
        StationResponses responses = PlanningResponses.of(plan, folder)
                .withHeadsOrComputed(plan, (stage, fraction) -> {})
                .orElseThrow();
        StationSeries superposed = RunInMemory.superposed(with(changed, rate(changed)), responses)
                .orElseThrow()
                .recording()
                .series()
                .get(plan.description().stationIndex("soak"));
        double end = plan.description().endDay();
        double told = changed.rounds().differences().get(0).largest();
        double found =
                Math.abs(superposed.headAt(end) - soak(changed, rate(changed)).headAt(end));
        assertTrue(found < 1e-3 && told < 1e-3, "told " + told + ", found " + found);
    }
}
