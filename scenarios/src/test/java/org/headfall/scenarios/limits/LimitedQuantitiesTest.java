package org.headfall.scenarios.limits;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.LimitedQuantity.ShareOfAvailableHead;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.analytic.TheisSolution;
import org.junit.jupiter.api.Test;

/**
 * Each kind of limited quantity and of comparison, on heads in closed form. Drawdown is that of Theis (1935), {@code
 * Q / (4 pi T) W(u)} with {@code u = r² S / (4 T t)}, whose rate of change is {@code Q / (4 pi T t) exp(-u)}.
 */
class LimitedQuantitiesTest {

    private static final String BORE = "Bore, \"north\"";
    private static final String SPRING = "Lignum Spring";
    private static final double T = 200;
    private static final double S = 2e-4;
    private static final double RATE = 2000;
    private static final double DISTANCE = 4000;
    private static final double START = 125;
    private static final double YEAR = 365.25;

    private final RunDescription description = SmallField.description();
    private final double end = description.endDay();
    private final TheisSolution theis = new TheisSolution(T, S);

    private double drawdown(double day) {
        return day <= 0 ? 0 : theis.drawdown(RATE, DISTANCE, day);
    }

    private StationSeries series(DoubleUnaryOperator head) {
        double[] days = new double[(int) end + 1];
        Arrays.setAll(days, i -> i);
        double[] heads = Arrays.stream(days).map(head).toArray();
        double[] discharge =
                Arrays.stream(heads).map(value -> 25 * (value - 98)).toArray();
        return new StationSeries(days, heads, heads, discharge, discharge);
    }

    private RunSeries run(DoubleUnaryOperator head, Map<Comparison, List<StationSeries>> others) {
        StationSeries one = series(head);
        return new RunSeries(List.of(one, one, one, one), others);
    }

    private Outcome outcome(LimitedQuantity quantity, String station, Comparison comparison, RunSeries run) {
        Limit limit = new Limit("limit", quantity, station, comparison, LimitPeriod.EVER, "");
        return new LimitEvaluation(description, run, new double[] {0.01, 0.01, 0.01, 0.01}, List.of())
                .evaluate(List.of(limit))
                .get(0)
                .outcome();
    }

    private Outcome.Worst worst(LimitedQuantity quantity, String station, Comparison comparison) {
        return outcome(quantity, station, comparison, run(day -> START - drawdown(day), Map.of()))
                .worstIfAny()
                .orElseThrow();
    }

    /** The mean over five years is the difference of two drawdowns; it is largest over the first five. */
    @Test
    void declineRateOverFiveYearsIsThatOfTheis() {
        Outcome.Worst worst = worst(new LimitedQuantity.DeclineRate(10, 5), SPRING, new Comparison.Nothing());
        double fiveYears = description.calendar().yearsAfter(0, 5);
        assertEquals(fiveYears, worst.day());
        assertEquals(drawdown(fiveYears) / (fiveYears / YEAR), worst.value(), 1e-9);
    }

    /** Over one year at the end the mean is near the slope in its middle, {@code Q / (4 pi T t) exp(-u)}. */
    @Test
    void lateDeclineRateIsTheSlopeOfTheis() {
        double from = description.calendar().yearsAfter(0, 9);
        Limit late = new Limit(
                "late",
                new LimitedQuantity.DeclineRate(10, 1),
                SPRING,
                new Comparison.Nothing(),
                new LimitPeriod(end, OptionalDouble.empty()),
                "");
        Outcome.Worst worst = new LimitEvaluation(
                        description, run(day -> START - drawdown(day), Map.of()), new double[4], List.of())
                .evaluate(List.of(late))
                .get(0)
                .outcome()
                .worstIfAny()
                .orElseThrow();
        double middle = (from + end) / 2;
        double u = DISTANCE * DISTANCE * S / (4 * T * middle);
        double slope = RATE / (4 * Math.PI * T * middle) * Math.exp(-u) * YEAR;
        assertEquals(slope, worst.value(), 2e-3 * slope);
    }

    /** Day on which the closed form passes a value, found by halving. */
    private double dayOf(double value) {
        double low = 0;
        double high = end;
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            if (drawdown(middle) < value) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    @Test
    void theDateOfCrossingIsThatOfTheisToTheDay() {
        double half = drawdown(end) / 2;
        Outcome.Crossed crossed = assertInstanceOf(
                Outcome.Crossed.class,
                outcome(
                        new LimitedQuantity.Drawdown(half),
                        SPRING,
                        new Comparison.Start(),
                        run(day -> START - drawdown(day), Map.of())));
        assertEquals(dayOf(half), crossed.firstDay(), 0.5);
    }

    @Test
    void drawdownSinceADateCountsFromThere() {
        Outcome.Worst worst = worst(new LimitedQuantity.Drawdown(99), SPRING, new Comparison.OnDay(1000, "2030-03-27"));
        assertEquals(drawdown(end) - drawdown(1000), worst.value(), 1e-9);
        assertEquals(0.02, worst.error(), 1e-12, "two computed heads");
    }

    /** On a straight decline the mean of some years is the value in their middle. */
    @Test
    void drawdownSinceTheMeanOfYearsCountsFromTheirMiddle() {
        Outcome outcome = outcome(
                new LimitedQuantity.Drawdown(99),
                SPRING,
                new Comparison.MeanOfYears(200, 1000, "some years"),
                run(day -> START - 0.001 * day, Map.of()));
        assertEquals(0.001 * (end - 600), outcome.worstIfAny().orElseThrow().value(), 1e-9);
    }

    @Test
    void drawdownBesideAnotherRunIsTheDifference() {
        StationSeries other = series(day -> START + 3);
        Comparison.BeforeAnyTaking before = new Comparison.BeforeAnyTaking();
        Outcome outcome = outcome(
                new LimitedQuantity.Drawdown(99),
                SPRING,
                before,
                run(day -> START - drawdown(day), Map.of(before, List.of(other, other, other, other))));
        assertEquals(3 + drawdown(end), outcome.worstIfAny().orElseThrow().value(), 1e-9);
    }

    /**
     * A column of 60 °C from the ground at 100 m down to the screen at -100 m under a head of 125 m: 225 m of water of
     * 998.2 kg/m³ carry 200 m of 983.2 kg/m³ (densities of Kell 1975) and press with the rest.
     */
    @Test
    void gaugePressureCountsTheHotColumn() {
        Outcome.Worst worst = outcome(
                        new LimitedQuantity.Pressure(10, OptionalDouble.empty()),
                        BORE,
                        new Comparison.Nothing(),
                        run(day -> START, Map.of()))
                .worstIfAny()
                .orElseThrow();
        assertEquals((998.2 * 225 - 983.2 * 200) * 9.80665e-3, worst.value(), 0.1);
        assertEquals(0.01 * 9.79, worst.error(), 1e-4);
    }

    @Test
    void shareOfAvailableHeadIsCountedFromItsLevel() {
        ShareOfAvailableHead share = new ShareOfAvailableHead(
                50, new ShareOfAvailableHead.Base(ShareOfAvailableHead.BaseKind.PUMP_INTAKE, OptionalDouble.empty()));
        Outcome.Worst worst = worst(share, BORE, new Comparison.Start());
        assertEquals(100 * (START - drawdown(end) - 40) / (START - 40), worst.value(), 1e-9);
        assertInstanceOf(
                Outcome.NotEvaluated.class,
                outcome(share, SPRING, new Comparison.Start(), run(day -> START, Map.of())));
    }

    @Test
    void springDischargeFollowsHeadAboveTheOutlet() {
        double most = 25 * (START - 98);
        double least = 25 * (START - drawdown(end) - 98);
        Outcome.Worst discharge = worst(new LimitedQuantity.SpringDischarge(1), SPRING, new Comparison.Nothing());
        assertEquals(least / 86.4, discharge.value(), 1e-9);
        assertEquals(25 * 0.01 / 86.4, discharge.error(), 1e-12);
        Outcome.Worst share = worst(new LimitedQuantity.ShareOfSpringDischarge(80), SPRING, new Comparison.Start());
        assertEquals(100 * least / most, share.value(), 1e-9);
        assertInstanceOf(
                Outcome.NotEvaluated.class,
                outcome(
                        new LimitedQuantity.SpringDischarge(1),
                        BORE,
                        new Comparison.Nothing(),
                        run(day -> START, Map.of())));
    }

    /** Change per metre of head on the days 500, 1500 and 2500. */
    private double[] perMetre(LimitedQuantity quantity, String station, Comparison comparison, RunSeries run) {
        Limit limit = new Limit("limit", quantity, station, comparison, LimitPeriod.EVER, "");
        LimitMargins margins = new LimitEvaluation(description, run, new double[4], List.of()).margins(limit);
        return IntStream.of(500, 1500, 2500)
                .mapToDouble(day -> margins.perMetre()[Arrays.binarySearch(margins.days(), day)])
                .toArray();
    }

    /**
     * By hand: a reference 10 m above the level from which head is counted, at it, and 10 m below. A metre is 10 per cent of 10 m, and 10 per
     * cent of the 250 m³/d that a spring of 25 m²/d gives by them; at and below its outlet it gives nothing that a share could be of.
     */
    @Test
    void changePerMetreIsNoPositiveNumberWhereAValueDoesNotFollowHead() {
        Comparison comparison = new Comparison.WithoutAnyBore();
        StationSeries other = series(day -> day < 1000 ? 108 : day < 2000 ? 98 : 88);
        RunSeries run = run(day -> START, Map.of(comparison, List.of(other, other, other, other)));
        ShareOfAvailableHead.Base level =
                new ShareOfAvailableHead.Base(ShareOfAvailableHead.BaseKind.GIVEN, OptionalDouble.of(98));
        LimitedQuantity head = new ShareOfAvailableHead(60, level);
        assertArrayEquals(
                new double[] {10, Double.POSITIVE_INFINITY, -10}, perMetre(head, SPRING, comparison, run), 1e-9);
        assertInstanceOf(Outcome.NotEvaluated.class, outcome(head, SPRING, comparison, run));
        assertArrayEquals(
                new double[] {10, 0, 0},
                perMetre(new LimitedQuantity.ShareOfSpringDischarge(80), SPRING, comparison, run),
                1e-9);
        assertArrayEquals(
                new double[] {Double.NaN, Double.NaN, Double.NaN},
                perMetre(
                        new LimitedQuantity.Flow(1, List.of(new LimitedQuantity.Flow.OpenTime(-1, 5000))),
                        BORE,
                        new Comparison.Nothing(),
                        run));
    }

    @Test
    void aFlowCountsOnlyWhileTheBoreIsLeftToFlow() {
        LimitedQuantity.Flow flow = new LimitedQuantity.Flow(1, List.of(new LimitedQuantity.Flow.OpenTime(-1, 500)));
        Outcome.Worst worst = worst(flow, BORE, new Comparison.Nothing());
        assertEquals(500, worst.day());
        assertEquals(25 * (START - drawdown(500) - 98) / 86.4, worst.value(), 1e-9);
    }

    /** 3-4-5: the bores stand at (160, 250) and (300, 100), the spring at (40, 500), in metres of the field. */
    @Test
    void distanceIsThatOfTheNearestOtherBore() {
        Outcome.Worst worst = worst(
                new LimitedQuantity.Distance(100, List.of(BORE, "Brücke")), SPRING, new Comparison.WithoutAnyBore());
        assertEquals(Math.hypot(120, 250), worst.value(), 1e-9);
        Outcome.Worst apart = worst(
                new LimitedQuantity.Distance(100, List.of(BORE, "Brücke")), BORE, new Comparison.WithoutAnyBore());
        assertEquals(Math.hypot(140, 150), apart.value(), 1e-9);
    }

    /** Where taking stopped at the end, the worst drawdown has passed only if head has come back from it. */
    @Test
    void aRunThatEndsAtItsWorstLeavesALimitAfterTakingUndecided() {
        Limit limit = new Limit(
                "far later",
                new LimitedQuantity.Drawdown(99),
                SPRING,
                new Comparison.Start(),
                LimitPeriod.EVER_AND_AFTER_TAKING,
                "");
        RunSeries falling = run(day -> START - drawdown(day), Map.of());
        RunSeries recovered = run(day -> START - Math.sin(Math.PI * day / end), Map.of());
        assertInstanceOf(Outcome.Undecided.class, afterTaking(limit, falling));
        assertInstanceOf(Outcome.Holds.class, afterTaking(limit, recovered));
    }

    private Outcome afterTaking(Limit limit, RunSeries longer) {
        LimitEvidence evidence = new LimitEvidence(
                longer,
                new double[4],
                List.of(),
                MapPlaces.NONE,
                MapSeries.NONE,
                Map.of(limit.comparison(), new AfterTaking(longer, new double[4], 100)));
        return new LimitEvaluation(description, evidence)
                .evaluate(List.of(limit))
                .get(0)
                .outcome();
    }

    /** Every cell has its own drawdown; the worst one and the area beyond are found among those of the place. */
    @Test
    void aMapIsJudgedByItsWorstCell() {
        int cells = description.grid().cellCount();
        double[] before = SmallField.filled(cells, START);
        double[] after = before.clone();
        Arrays.setAll(after, cell -> START - cell);
        MapSeries maps = new MapSeries(List.of(new HeadGrid(0, before), new HeadGrid(100, after)), Map.of(), 0.01);
        MapPlaces places =
                new MapPlaces(Map.of("zone", new MapPlaces.Part(List.of(), new int[] {1, 2, 5})), new double[0]);
        Limit limit = new Limit(
                "zone",
                new LimitedQuantity.Drawdown(1.5),
                new LimitPlace.OnMap("zone"),
                new Comparison.Start(),
                LimitPeriod.EVER,
                OptionalDouble.empty(),
                "");
        LimitEvidence evidence =
                new LimitEvidence(run(day -> START, Map.of()), new double[4], List.of(), places, maps, Map.of());
        Outcome.Crossed crossed = assertInstanceOf(
                Outcome.Crossed.class,
                new LimitEvaluation(description, evidence)
                        .evaluate(List.of(limit))
                        .get(0)
                        .outcome());
        assertEquals(100, crossed.firstDay());
        assertEquals(5, crossed.worst().value(), 1e-12);
        double area = (description.grid().area(2) + description.grid().area(5)) / 1e6;
        assertEquals(
                String.format(java.util.Locale.ROOT, "%.3f", area),
                crossed.worst().note().replaceAll(".*limit on ([0-9.]+) km.*", "$1"));
    }

    private static Outcome.Worst worstOnMap(
            RunDescription description, RunSeries run, LimitedQuantity quantity, MapSeries maps, ChangedRun changed) {
        int[] cells = IntStream.range(0, description.grid().cellCount()).toArray();
        MapPlaces places = new MapPlaces(Map.of("zone", new MapPlaces.Part(List.of(), cells)), new double[0]);
        Limit limit = new Limit(
                "zone",
                quantity,
                new LimitPlace.OnMap("zone"),
                new Comparison.Start(),
                LimitPeriod.EVER,
                OptionalDouble.empty(),
                "");
        LimitEvidence evidence = new LimitEvidence(run, new double[4], List.of(changed), places, maps, Map.of());
        return new LimitEvaluation(description, evidence)
                .evaluate(List.of(limit))
                .get(0)
                .outcome()
                .worstIfAny()
                .orElseThrow();
    }

    /**
     * A changed run whose heads are 3 m higher throughout changes a floor level by 3 m and a drawdown by nothing. On one wide
     * cell, whose mean head falls by 0.5 m more than that of the run, it changes drawdown by 0.5 m in every cell.
     */
    @Test
    void aChangedMapCountsByWhatItDoesToTheLimitedValue() {
        int count = description.grid().cellCount();
        double[] before = SmallField.filled(count, START);
        double[] after = new double[count];
        Arrays.setAll(after, cell -> START - cell);
        MapSeries maps = new MapSeries(List.of(new HeadGrid(0, before), new HeadGrid(100, after)), Map.of(), 0.01);
        RunSeries run = run(day -> START, Map.of());
        MapSeries higher = new MapSeries(
                List.of(
                        new HeadGrid(0, Arrays.stream(before).map(h -> h + 3).toArray()),
                        new HeadGrid(100, Arrays.stream(after).map(h -> h + 3).toArray())),
                Map.of(),
                0);
        int[] same = IntStream.range(0, count).toArray();
        ChangedRun shifted = new ChangedRun(run, new ChangedMaps(higher, same), 0.5);
        LimitedQuantity drawdown = new LimitedQuantity.Drawdown(99);
        LimitedQuantity floor = new LimitedQuantity.FloorLevel(0);
        assertEquals(0.01, worstOnMap(description, run, drawdown, maps, shifted).error(), 1e-12);
        assertEquals(
                0.01 + 1.5, worstOnMap(description, run, floor, maps, shifted).error(), 1e-12);
        double sum = 0;
        double area = 0;
        for (int cell = 0; cell < count; cell++) {
            if (description.aquifer().active()[cell]) {
                sum += description.grid().area(cell) * after[cell];
                area += description.grid().area(cell);
            }
        }
        MapSeries wide = new MapSeries(
                List.of(new HeadGrid(0, new double[] {START}), new HeadGrid(100, new double[] {sum / area - 0.5})),
                Map.of(),
                0);
        ChangedRun merged = new ChangedRun(run, new ChangedMaps(wide, new int[count]), 1);
        assertEquals(
                0.01 + 0.5, worstOnMap(description, run, drawdown, maps, merged).error(), 1e-9);
    }
}
