package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Limits on volumes, worked by hand, and on the discharge of a spring, held against the simulator and another allocation. */
class CountedLimitsTest {

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
            bores:
              - {name: one, at: [4.75 km, 5.25 km], holder: Elder, group: proposed, screen_radius: 100 mm, rate: 1 L/s}
              - {name: two, at: [7.75 km, 5.25 km], holder: Younger, group: proposed, screen_radius: 100 mm, rate: 1 L/s}
            accounts: ACCOUNTS
            limits: LIMITS
            start: {steady: without bores}
            output: {grids: yearly, bores: monthly, report_after: [1 yr], head_tolerance: 0.5 mm}
            allocation:
              goal: largest yield
              CHANGES
              largest_rate: 30 L/s
              efficiency: 60 %
            """;

    @TempDir
    private Path folder;

    private RunPlan plan;

    private AllocationResult allocate(String limits, String changes) throws Exception {
        return allocate(limits, changes, "{water_year: 1 July}");
    }

    private AllocationResult allocate(String limits, String changes, String accounts) throws Exception {
        AllocationResult result = search(limits, changes, accounts);
        assertTrue(result.worst() >= -1e-3, "least left " + result.worst());
        assertEquals(List.of(), result.uncounted());
        return result;
    }

    private AllocationResult search(String limits, String changes, String accounts) throws Exception {
        AllocationDocument document = AllocationDocument.of(
                folder,
                DOCUMENT.replace("LIMITS", limits).replace("CHANGES", changes).replace("ACCOUNTS", accounts));
        plan = document.plan();
        return document.allocate(plan);
    }

    /**
     * The year from July 2027 has 366 days, so a rate that never changes is 100 ML by them, less the half cubic metre that is kept free; a ML
     * more is a 366th more a day.
     */
    @Test
    void bothBoresTogetherTakeTheVolumeOfTheLongestYear() throws Exception {
        AllocationResult result = allocate(
                "[{name: both, quantity: volume, at: proposed bores, when: ever, at_most: 100 ML},"
                        + " {name: second, quantity: volume, at: two, when: ever, at_most: 40 ML}]",
                "");
        double daily = (100 - Requirements.TOLERATED) * 1000 / 366;
        assertEquals(daily, result.yield(), 1e-5 * daily);
        assertTrue(
                result.bores().get(1).yield() <= 0.4 * daily + 1e-3,
                result.bores().toString());
        AllocationResult.Kept both = result.requirements().stream()
                .filter(one -> one.name().startsWith("both"))
                .findFirst()
                .orElseThrow();
        assertEquals("ML/yr per ML", result.priceUnit(both));
        assertEquals(365.25 / 366, both.price(), 1e-6);
        assertEquals(Requirements.TOLERATED, both.simulated(), 1e-4);
    }

    /** With rates of each year all four volumes are taken: 400 ML in 1461 days. */
    @Test
    void ratesOfEachYearTakeTheVolumeOfEach() throws Exception {
        AllocationResult result = allocate(
                "[{name: both, quantity: volume, at: proposed bores, when: ever, at_most: 100 ML}]",
                "rates_change_after: 1 yr");
        assertEquals(400_000 / 1461.0, result.yield(), 1e-5 * result.yield());
    }

    /** Where a volume alone binds, seasons are alike within each year, and bores are alike. */
    @Test
    void seasonsAreEvenWhereOnlyAVolumeBinds() throws Exception {
        AllocationResult result = allocate(
                "[{name: both, quantity: volume, at: proposed bores, when: ever, at_most: 100 ML}]",
                "rates_change_after: 1 yr\n"
                        + "  seasons: [{from: 1 July, to: 31 December}, {from: 1 January, to: 30 June}]");
        assertEquals(400_000 / 1461.0, result.yield(), 1e-5 * result.yield());
        assertEquals(List.of(List.of("one", "two")), result.evenly());
        double[] days = {365, 366, 365, 365};
        for (AllocationResult.BoreRates bore : result.bores()) {
            for (int group = 0; group < 8; group++) {
                double even = 50_000 / days[group / 2];
                assertEquals(even, bore.rates().get(group), 2e-3 * even, bore.name() + " " + bore.rates());
            }
        }
    }

    /** Counted from the second of July years on, the volume leaves the first year free: 30 L/s of each bore, and then 100 ML a year. */
    @Test
    void aYearThatEndsAsTheLimitBeginsIsFree() throws Exception {
        AllocationResult result = allocate(
                "[{name: both, quantity: volume, at: proposed bores, when: after 365 d, at_most: 100 ML}]",
                "rates_change_after: 1 yr");
        for (AllocationResult.BoreRates bore : result.bores()) {
            assertEquals(30 * 86.4, bore.rates().get(0), 1e-6 * 2592, bore.name());
        }
        assertEquals((2 * 2592 * 365 + 300_000) / 1461.0, result.yield(), 1e-5 * result.yield());
    }

    /**
     * In the first year, of 365 days, the meter of the first bore counts, 60 ML whatever it is given: the second has the other 40. After it
     * both together have 100 a year.
     */
    @Test
    void whatAMeterHasShownCountsInsteadOfRates() throws Exception {
        Files.writeString(
                folder.resolve("meters.csv"), "name,date,reading (ML)\none,2026-07-01,0\none,2027-07-01,60\n");
        AllocationResult result = allocate(
                "[{name: both, quantity: volume, at: proposed bores, when: ever, at_most: 100 ML}]",
                "rates_change_after: 1 yr",
                "{water_year: 1 July, meters: meters.csv}");
        List<Double> one = result.bores().get(0).rates();
        List<Double> two = result.bores().get(1).rates();
        assertEquals(30 * 86.4, one.get(0), 1e-6 * 2592);
        assertEquals((40 - Requirements.TOLERATED) * 1000 / 365, two.get(0), 1e-3);
        double[] days = {365, 366, 365, 365};
        for (int year = 1; year < 4; year++) {
            assertEquals(
                    (100 - Requirements.TOLERATED) * 1000 / days[year],
                    one.get(year) + two.get(year),
                    1e-3,
                    "year " + year);
        }
    }

    /** Of 100 ML 60 are none that rates decide about, which explains why the other bore takes so little. */
    @Test
    void whatMetersCountOfAVolumeIsRemarkedOn() throws Exception {
        Files.writeString(
                folder.resolve("meters.csv"), "name,date,reading (ML)\none,2026-07-01,0\none,2027-07-01,60\n");
        AllocationResult result = allocate(
                "[{name: both, quantity: volume, at: proposed bores, when: within 1 yr, at_most: 100 ML}]",
                "",
                "{water_year: 1 July, meters: meters.csv}");
        AllocationResult.Kept both = result.requirements().get(0);
        String remark =
                "meters count 60.00 ML of the 100.00 ML in the water year in which least is left, whatever the rates";
        assertEquals(remark, both.remark());
        assertTrue(AllocationWords.kept(result, both).endsWith("; " + remark), AllocationWords.kept(result, both));
        assertEquals(
                (40 - Requirements.TOLERATED) * 1000 / 365,
                result.bores().get(1).rates().get(0),
                1e-3);
    }

    /** The least discharge at any time is what is allowed and its error, and the price what a little less of it yields. */
    @Test
    void theSpringKeepsItsLeastDischarge() throws Exception {
        String limit = "[{name: flows, quantity: spring discharge, at: soak, when: ever, at_least: %s L/s}]";
        AllocationResult result = allocate(limit.formatted(1.0), "");
        AllocationResult.Kept flows = result.requirements().get(0);
        double[] rates =
                result.bores().stream().mapToDouble(bore -> bore.rates().get(0)).toArray();
        double[] days = IntStream.range(0, 293).mapToDouble(i -> 5.0 * i).toArray();
        double least = Arrays.stream(RunInMemory.stations(
                                new RatesInPlan(plan, result.blocks(), new int[] {0, 1}).with(rates, days))
                        .get(plan.description().stationIndex("soak"))
                        .discharge())
                .min()
                .orElseThrow();
        assertEquals(1.0 + flows.reserve(), least / 86.4, 1e-3);
        assertTrue(result.yield() > 500, "yield " + result.yield());
        AllocationResult lower = allocate(limit.formatted(0.98), "");
        double gain = (lower.yield() - result.yield()) * 0.36525 / 0.02;
        assertEquals(gain, flows.price(), 0.02 * gain);
    }

    /** A limit above what flows without any taking gives way by what lacks, and the rates by everything. */
    @Test
    void aSpringThatNeverGaveSoMuchIsNamed() throws Exception {
        AllocationResult result = search(
                "[{name: flows, quantity: spring discharge, at: soak, when: ever, at_least: 10 L/s}]",
                "",
                "{water_year: 1 July}");
        assertEquals(1, result.relaxed().size());
        AllocationResult.Relaxed flows = result.relaxed().get(0);
        assertTrue(flows.needed() > 2 && flows.needed() < 10, flows.toString());
        assertEquals(0, result.yield(), 1.0);
    }

    /** Head at the start is 100 m along the fixed side and less elsewhere, so that nothing is available above 100 m at a bore. */
    @Test
    void aShareOfNothingIsNotCountedAndSaysWhy() throws Exception {
        AllocationResult result = search(
                "[{name: share, quantity: share of available head, above: 100 m, at: one, when: ever, at_least: 50 %},"
                        + " {name: floor, quantity: floor level, at: one, when: ever, at_least: 95 m}]",
                "", "{water_year: 1 July}");
        assertEquals(1, result.uncounted().size());
        assertEquals("share (one)", result.uncounted().get(0).limit());
        assertEquals(
                "cannot be judged: Head was not above 100.00 m above datum in what it is compared with",
                result.uncounted().get(0).reason());
        assertEquals("", result.uncounted().get(0).outcome(), "the reason says it all");
        assertEquals(1, result.requirements().size());
        assertTrue(result.worst() >= -1e-3, "least left " + result.worst());
        assertTrue(result.yield() > 500, "yield " + result.yield());
    }

    /** What the simulator cannot say of limits that are not counted it gives a reason for; distances are known without a run. */
    @Test
    void limitsThatTheSearchCannotJudgeSayWhy() throws Exception {
        AllocationResult result = search(
                "[{name: map, quantity: drawdown, at: every cell, cause: everyone, compared_with: before any taking, when: ever,"
                        + " at_most: 9 m},"
                        + " {name: later, quantity: drawdown, at: soak, cause: proposed bores, compared_with: without them,"
                        + " when: 'ever, also after taking stops', at_most: 9 m},"
                        + " {name: apart, quantity: distance, at: soak, cause: proposed bores, at_least: 1 km}]",
                "",
                "{water_year: 1 July}");
        assertEquals(
                List.of(
                        "map (every cell) is judged on the map; by the simulator: not judged, as the search looks at bores, springs"
                                + " and points only",
                        "later (soak) is judged after taking has stopped; by the simulator: not judged: The run that goes on after"
                                + " taking stops was not made",
                        "apart (soak) is about distances, not heads; by the simulator: holds, worst 2500.00 m, allowed 1000.00"),
                result.uncounted().stream().map(UncountedLimit::sentence).toList());
    }
}
