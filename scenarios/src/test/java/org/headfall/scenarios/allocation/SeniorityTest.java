package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two holders in a field with a fixed head to the east. The bore near the protected point harms it more, so the largest yield
 * of both leaves it out, and its seniority costs the other one. The reference is other allocations: of the senior alone, and
 * under a limit that allows a little more.
 */
class SeniorityTest {

    private static final double MEGALITRES_PER_YEAR = 365.25 / 1000;

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
            protected:
              - {name: point, at: [2.25 km, 5.25 km]}
              - {name: nobody's limit, at: [5.75 km, 7.75 km]}
            bores:
              - {name: near, at: [3.75 km, 5.25 km], holder: Elder, group: proposed, screen_radius: 100 mm, rate: NEAR}
              - {name: far, at: [7.75 km, 5.25 km], holder: Younger, group: proposed, screen_radius: 100 mm, rate: 1 L/s}
            limits:
              - name: the point keeps its head
                quantity: drawdown
                at: point
                cause: proposed bores
                compared_with: without them
                when: ever
                at_most: ALLOWED m
            start: {heads: 100 m}
            output: {grids: yearly, bores: yearly, report_after: [1 yr], head_tolerance: 1 mm}
            allocation:
              goal: largest yield
              bores: BORES
              largest_rate: 100 L/s
              SENIORITY
              efficiency: 60 %
            """;

    @TempDir
    private Path folder;

    private AllocationResult allocate(String near, String bores, String seniority, double allowed) throws Exception {
        AllocationResult result = AllocationDocument.of(
                        folder,
                        DOCUMENT.replace("NEAR", near)
                                .replace("BORES", bores)
                                .replace("SENIORITY", seniority)
                                .replace("ALLOWED", String.valueOf(allowed)))
                .allocate();
        assertTrue(result.worst() >= -1e-3, "least left " + result.worst());
        return result;
    }

    private static double megalitres(AllocationResult result) {
        return result.yield() * MEGALITRES_PER_YEAR;
    }

    /** The senior gets what it would alone, and the other what is left: nothing. */
    @Test
    void theSeniorIsServedFirst() throws Exception {
        AllocationResult equals = allocate("0 L/s", "[near, far]", "", 4);
        AllocationResult first = allocate("0 L/s", "[near, far]", "seniority: [Elder]", 4);
        assertEquals(0, equals.bores().get(0).yield(), 1e-3);
        assertTrue(megalitres(equals) > 2 * megalitres(first), equals.bores() + ", " + first.bores());
        assertEquals(0, first.bores().get(1).yield(), 1e-3 * first.yield());
        AllocationResult last = allocate("0 L/s", "[near, far]", "seniority: [Younger, Elder]", 4);
        assertEquals(megalitres(equals), megalitres(last), 1e-4 * megalitres(equals));
    }

    /** What a centimetre more of the limit yields, the senior served again: far less than what the other would make of it. */
    @Test
    void priceIsWhatALittleMoreOfTheLimitYieldsInAll() throws Exception {
        AllocationResult first = allocate("0 L/s", "[near, far]", "seniority: [Elder]", 4);
        AllocationResult more = allocate("0 L/s", "[near, far]", "seniority: [Elder]", 4.01);
        AllocationResult.Kept limit = first.requirements().get(0);
        double gain = (megalitres(more) - megalitres(first)) / 0.01;
        assertEquals(gain, limit.price(), 0.01 * gain);
        assertEquals(0.1 * gain, limit.gain(), 0.001 * gain);
    }

    /** Of two bores as far from a point, that by the fixed head lowers it less; no limit is needed there to be told how much less. */
    @Test
    void tradingIsKnownAtPointsWithoutALimit() throws Exception {
        AllocationResult result = allocate("0 L/s", "[near, far]", "", 4);
        AllocationResult.Exchange exchange = result.exchanges().stream()
                .filter(one ->
                        one.place().equals("nobody's limit") && one.from().equals("near"))
                .findFirst()
                .orElseThrow();
        assertEquals("far", exchange.to());
        assertTrue(exchange.rate() > 1.2 && exchange.rate() < 10, exchange.toString());
    }
}
