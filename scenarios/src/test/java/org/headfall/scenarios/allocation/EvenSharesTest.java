package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * By symmetry: two bores stand alike to the east and the west of a point in an even field, a third one beside the point. Taking
 * by the first two does the same there, and less than by the third.
 */
class EvenSharesTest {

    private static final String DOCUMENT = """
            title: Twins
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 4 yr}
            grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 10 km}, cell: 500 m}
            aquifer: {transmissivity: 300 m2/d, storativity: 3e-4, top: -400 m, bottom: -500 m}
            ground: 110 m
            boundaries:
              - {name: north, side: north, fixed_head: 100 m}
            protected:
              - {name: point, at: [5 km, 4.25 km]}
            bores:
              - {name: beside, at: [5 km, 3.25 km], group: proposed, screen_radius: 100 mm, rate: 5 L/s}
              - {name: west, at: [2.25 km, WEST km], group: proposed, screen_radius: 100 mm, rate: 5 L/s}
              - {name: east, at: [7.75 km, 4.25 km], group: proposed, screen_radius: 100 mm, rate: 5 L/s}
            limits:
              - name: the point keeps its head
                quantity: drawdown
                at: point
                cause: proposed bores
                compared_with: without them
                when: ever
                at_most: 3 m
            start: {heads: 100 m}
            output: {grids: yearly, bores: yearly, report_after: [1 yr], head_tolerance: 1 mm}
            allocation:
              goal: largest yield
              largest_rate: 40 L/s
              rates_change_after: 2 yr
              efficiency: 60 %
            """;

    @TempDir
    private Path folder;

    private AllocationResult allocate(String west) throws Exception {
        return AllocationDocument.of(folder, DOCUMENT.replace("WEST", west)).allocate();
    }

    @Test
    void twinsShareAlikeAndOthersDoNot() throws Exception {
        AllocationResult result = allocate("4.25");
        assertEquals(List.of(List.of("west", "east")), result.evenly());
        List<AllocationResult.BoreRates> bores = result.bores();
        assertTrue(bores.get(1).yield() > 100, bores.toString());
        for (int group = 0; group < result.blocks().groups(); group++) {
            double rate = bores.get(1).rates().get(group);
            assertEquals(rate, bores.get(2).rates().get(group), 1e-9 * rate, "group " + group);
        }
        assertEquals(0, bores.get(0).yield(), 1e-6 * bores.get(1).yield());
        assertTrue(result.worst() >= -1e-3, "least left " + result.worst());
        assertTrue(result.worst() < 0.02, "least left " + result.worst());
    }

    /** A cell nearer to the boundary one of them is the better one, and takes all. */
    @Test
    void bettersAreNotHeldBack() throws Exception {
        AllocationResult result = allocate("4.75");
        assertEquals(List.of(), result.evenly());
        assertEquals(0, result.bores().get(2).yield(), 1e-6 * result.yield());
        assertTrue(result.yield() >= allocate("4.25").yield(), result.bores().toString());
    }
}
