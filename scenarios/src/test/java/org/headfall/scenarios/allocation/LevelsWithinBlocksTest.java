package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A bore with one rate for two years beside a neighbour who takes for a few months of each: its level is lowest within the block,
 * when the neighbour stops. The reference is the simulator, looked at every five days.
 */
class LevelsWithinBlocksTest {

    private static final double FLOOR = 90;

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
            protected:
              - {name: point, at: [3.25 km, 6.75 km]}
            bores:
              - {name: town, at: [5.25 km, 5.25 km], group: proposed, screen_radius: 100 mm, LEVEL rate: 1 L/s}
              - {name: season, at: [3.25 km, 5.25 km], group: existing, screen_radius: 100 mm, rate: {file: season.csv, column: rate}}
            limits: LIMITS
            start: {heads: 100 m}
            output: {grids: yearly, bores: yearly, report_after: [1 yr], head_tolerance: 1 mm}
            allocation:
              goal: largest yield
              bores: [town]
              largest_rate: 100 L/s
              efficiency: 60 %
            """;

    private static final String SEASONS = """
            date,rate (L/s)
            2026-07-01,0
            2026-10-03,8
            2027-02-05,0
            2027-10-03,8
            2028-02-05,0
            """;

    @TempDir
    private Path folder;

    /** Series of stations every five days with the rates that were found. */
    private List<StationSeries> found(String level, String limits) throws Exception {
        Files.writeString(folder.resolve("season.csv"), SEASONS);
        AllocationDocument document =
                AllocationDocument.of(folder, DOCUMENT.replace("LEVEL", level).replace("LIMITS", limits));
        RunPlan plan = document.plan();
        AllocationResult result = document.allocate(plan);
        double[] rates = result.bores().get(0).rates().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        double[] days = IntStream.range(0, 147).mapToDouble(i -> 5.0 * i).toArray();
        return RunInMemory.stations(new RatesInPlan(plan, result.blocks(), new int[] {0}).with(rates, days));
    }

    private static void assertLowestWithin(double floor, double[] levels) {
        double lowest = Arrays.stream(levels).skip(1).min().orElseThrow();
        // The last record within five days of the neighbour's stop may miss the lowest by centimetres, never from
        // below.
        assertTrue(lowest >= floor - 1e-3, "lowest " + lowest);
        assertEquals(floor, lowest, 0.1);
        assertTrue(levels[levels.length - 1] > floor + 0.5, "at the end " + levels[levels.length - 1]);
    }

    @Test
    void lowestLevelHoldsWhenTheNeighbourStops() throws Exception {
        List<StationSeries> series = found("lowest_level: 90 m,", "[]");
        assertLowestWithin(FLOOR, series.get(0).levelInBore());
    }

    @Test
    void limitOnHeadHoldsWhenTheNeighbourStops() throws Exception {
        List<StationSeries> series =
                found("", "[{name: keeps head, quantity: floor level, at: point, when: ever, at_least: 92 m}]");
        assertLowestWithin(92, series.get(2).head());
    }
}
