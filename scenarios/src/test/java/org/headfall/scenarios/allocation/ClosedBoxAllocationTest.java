package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A box of 10 km x 10 km that no water enters: what is taken comes from storage, so drawdown is the volume over S A, which is
 * 100,000 m³ a metre, everywhere but for the slope towards the bore. Within a season of half a year that slope is that of
 * steady taking ({@code S A / T} is 20 days), and at the point, 5 km off, 0.2 m at most, 1 % of the 20 m that are allowed.
 */
class ClosedBoxAllocationTest {

    private static final double VOLUME = 20 * 100_000;
    private static final double LARGEST = 1728;
    private static final double DAYS_OF_TEN_YEARS = 3652.5;
    private static final double WITHIN = 0.01;

    private static final String DOCUMENT = """
            title: A box
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 20 yr}
            grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 10 km}, cell: 500 m}
            aquifer: {transmissivity: 5000 m2/d, storativity: 1e-3, top: -400 m, bottom: -500 m}
            ground: 110 m
            protected:
              - {name: point, at: [5.25 km, 0.75 km]}
            bores:
              - {name: town, at: [5.25 km, 5.25 km], group: proposed, screen_radius: 100 mm, rate: 5 L/s}
            limits:
              - name: the point keeps its head
                quantity: drawdown
                at: point
                cause: proposed bores
                compared_with: without them
                when: WHEN
                at_most: 20 m
            start: {heads: 100 m}
            output: {grids: yearly, bores: yearly, report_after: [1 yr], head_tolerance: 1 mm}
            allocation:
              goal: largest yield
              largest_rate: 20 L/s
              seasons:
                - {from: 1 July, to: 31 December}
                - {from: 1 January, to: 30 June}
              rates_change_after: 1 yr
              efficiency: 60 %
            """;

    @TempDir
    private Path folder;

    private AllocationResult allocate(String when, String alike) throws Exception {
        return allocate(DOCUMENT, when, alike);
    }

    private AllocationResult allocate(String text, String when, String alike) throws Exception {
        AllocationResult result = AllocationDocument.of(
                        folder,
                        text.replace("WHEN", when).replace("rates_change_after: 1 yr", "rates_change_after: " + alike))
                .allocate();
        assertTrue(result.worst() >= -1e-3, "least left " + result.worst());
        return result;
    }

    /**
     * A limit of the first ten years. The same rate in all years is what empties the volume in ten; rates of every season
     * do the same for ten years and then are the largest, so they yield the mean of both: here 2.08 times as much.
     */
    @Test
    void ratesOfEverySeasonTakeWhatALimitThatEndsNoLongerForbids() throws Exception {
        double inTenYears = VOLUME / DAYS_OF_TEN_YEARS;
        AllocationResult alike = allocate("within 10 yr", "20 yr");
        assertEquals(inTenYears, alike.yield(), WITHIN * inTenYears);
        AllocationResult free = allocate("within 10 yr", "1 yr");
        double expected = 0.5 * (inTenYears + LARGEST);
        assertEquals(expected, free.yield(), WITHIN * expected);
        assertEquals(40, free.blocks().groups());
        List<Double> rates = free.bores().get(0).rates();
        for (int group = 0; group < 40; group++) {
            if (group >= 20) {
                assertEquals(LARGEST, rates.get(group), 1e-6 * LARGEST, "season " + group);
            }
        }
    }

    /** A limit that holds to the end: all schedules that take the volume are as good, and none is better. */
    @Test
    void ratesOfEverySeasonGainNothingWhereVolumeDecides() throws Exception {
        double inTwentyYears = VOLUME / (2 * DAYS_OF_TEN_YEARS);
        assertEquals(inTwentyYears, allocate("ever", "20 yr").yield(), WITHIN * inTwentyYears);
        assertEquals(inTwentyYears, allocate("ever", "1 yr").yield(), WITHIN * inTwentyYears);
    }

    /** By hand: of the 500 m above the aquifer top 96 % have to stay, so heads may fall by the same 20 m. */
    @Test
    void shareOfAvailableHeadIsKeptAsTheDrawdownIs() throws Exception {
        double inTwentyYears = VOLUME / (2 * DAYS_OF_TEN_YEARS);
        String share = "quantity: share of available head\n    above: aquifer top";
        AllocationResult result = allocate(
                DOCUMENT.replace("quantity: drawdown", share).replace("at_most: 20 m", "at_least: 96 %"),
                "ever",
                "20 yr");
        assertEquals(inTwentyYears, result.yield(), WITHIN * inTwentyYears);
        assertEquals(List.of(), result.uncounted());
    }
}
