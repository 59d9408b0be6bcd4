package org.headfall.scenarios.limits;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.StationSeries;
import org.junit.jupiter.api.Test;

/**
 * Limits on heads in closed form: drawdown after Cooper and Jacob (1946), {@code s = a ln(t / t0)}, whose rate of
 * decline is {@code a / t} and which passes a value v at {@code t0 exp(v / a)}.
 */
class LimitEvaluationTest {

    private static final double A = 0.8;
    private static final double T0 = 0.5;
    private static final String SPRING = "Lignum Spring";

    private final RunDescription description = SmallField.description();
    private final double[] days = daily((int) description.endDay());

    private static double[] daily(int last) {
        double[] days = new double[last + 1];
        Arrays.setAll(days, i -> i);
        return days;
    }

    private static double drawdown(double day) {
        return day <= T0 ? 0 : A * Math.log(day / T0);
    }

    /** Every station has drawdown of a multiple of the closed form below 120 m, and of another without proposed bores. */
    private RunSeries run(double multiple, double without) {
        return new RunSeries(
                series(120, multiple), Map.of(new Comparison.WithoutProposedBores(), series(120, without)));
    }

    private List<StationSeries> series(double start, double multiple) {
        double[] head =
                Arrays.stream(days).map(day -> start - multiple * drawdown(day)).toArray();
        StationSeries series = new StationSeries(days, head, head, head, head);
        return List.of(series, series, series, series);
    }

    private Outcome outcome(LimitedQuantity quantity, Comparison comparison, LimitPeriod period, double error) {
        return outcome(quantity, comparison, period, error, List.of());
    }

    private Outcome outcome(
            LimitedQuantity quantity,
            Comparison comparison,
            LimitPeriod period,
            double error,
            List<ChangedRun> changedRuns) {
        Limit limit = new Limit("limit", quantity, SPRING, comparison, period, "");
        double[] errors = {error, error, error, error};
        return new LimitEvaluation(description, run(1, 0.25), errors, changedRuns)
                .evaluate(List.of(limit))
                .get(0)
                .outcome();
    }

    private Outcome sinceStart(LimitedQuantity quantity, double error) {
        return outcome(quantity, new Comparison.Start(), LimitPeriod.EVER, error);
    }

    @Test
    void drawdownIsCrossedOnTheDayOfTheClosedForm() {
        Outcome.Crossed crossed =
                assertInstanceOf(Outcome.Crossed.class, sinceStart(new LimitedQuantity.Drawdown(5), 0.01));
        assertEquals(T0 * Math.exp(5 / A), crossed.firstDay(), 0.01);
        assertEquals(description.endDay(), crossed.worst().day());
        assertEquals(5 - drawdown(description.endDay()), crossed.worst().margin(), 1e-9);
    }

    @Test
    void floorLevelIsCrossedOnTheDayOfTheClosedForm() {
        Outcome.Crossed crossed =
                assertInstanceOf(Outcome.Crossed.class, sinceStart(new LimitedQuantity.FloorLevel(116), 0.01));
        assertEquals(T0 * Math.exp(4 / A), crossed.firstDay(), 0.01);
    }

    @Test
    void declineRateIsThatOfTheClosedForm() {
        Outcome.Crossed crossed =
                assertInstanceOf(Outcome.Crossed.class, sinceStart(new LimitedQuantity.DeclineRate(0.5, 1), 0.01));
        double year = description.calendar().yearsAfter(0, 1);
        assertEquals(year, crossed.worst().day(), "the first whole year declines fastest");
        assertEquals(drawdown(year) / (year / 365.25), crossed.worst().value(), 1e-9);
    }

    @Test
    void onlyTheProposedBoresCountWhereTheRunWithoutThemIsCompared() {
        Outcome.Crossed crossed = assertInstanceOf(
                Outcome.Crossed.class,
                outcome(
                        new LimitedQuantity.Drawdown(5),
                        new Comparison.WithoutProposedBores(),
                        LimitPeriod.EVER,
                        0.01));
        assertEquals(T0 * Math.exp(5 / (0.75 * A)), crossed.firstDay(), 0.05);
        assertEquals(0.02, crossed.worst().error(), 1e-12);
    }

    @Test
    void holdsOutsideThePeriodInWhichItCounts() {
        LimitPeriod early = new LimitPeriod(0, OptionalDouble.of(100));
        Outcome.Holds holds = assertInstanceOf(
                Outcome.Holds.class, outcome(new LimitedQuantity.Drawdown(5), new Comparison.Start(), early, 0.01));
        assertEquals(100, holds.worst().day());
        assertEquals(5 - drawdown(100), holds.worst().margin(), 1e-9);
    }

    @Test
    void staysUndecidedWhereTheMarginIsBelowTheError() {
        double last = drawdown(description.endDay());
        assertInstanceOf(Outcome.Undecided.class, sinceStart(new LimitedQuantity.Drawdown(last + 0.005), 0.01));
        assertInstanceOf(Outcome.Undecided.class, sinceStart(new LimitedQuantity.Drawdown(last - 0.005), 0.01));
        assertInstanceOf(Outcome.Holds.class, sinceStart(new LimitedQuantity.Drawdown(last + 0.005), 0.001));
    }

    /** A far boundary moved out shifts all heads by 3 m and deepens drawdown by 2 %: each limit counts its own change. */
    @Test
    void aChangedRunCountsByWhatItDoesToTheLimitedValue() {
        List<StationSeries> deeper = series(123, 1.02);
        List<StationSeries> deeperWithout = series(123, 0.25);
        ChangedRun changed = new ChangedRun(
                new RunSeries(deeper, Map.of(new Comparison.WithoutProposedBores(), deeperWithout)), 0.5);
        double last = drawdown(description.endDay());
        assertEquals(0.01 + 0.01 * last, error(new LimitedQuantity.Drawdown(5), new Comparison.Start(), changed), 1e-9);
        assertEquals(
                0.02 + 0.01 * last,
                error(new LimitedQuantity.Drawdown(5), new Comparison.WithoutProposedBores(), changed),
                1e-9);
        assertEquals(0.01 + 1.5, error(new LimitedQuantity.FloorLevel(100), new Comparison.Start(), changed), 1e-9);
    }

    private double error(LimitedQuantity quantity, Comparison comparison, ChangedRun changed) {
        LimitPeriod ever = LimitPeriod.EVER;
        Outcome outcome = outcome(quantity, comparison, ever, 0.01, List.of(changed));
        return outcome instanceof Outcome.Crossed crossed
                ? crossed.worst().error()
                : ((Outcome.Holds) outcome).worst().error();
    }

    @Test
    void staysUndecidedWhereTheRunEndsBeforeThePeriod() {
        LimitPeriod longer = new LimitPeriod(0, OptionalDouble.of(20 * 365.25));
        assertInstanceOf(
                Outcome.Undecided.class,
                outcome(new LimitedQuantity.Drawdown(50), new Comparison.Start(), longer, 0.01));
    }

    @Test
    void isNotEvaluatedWithoutTheRunItNeeds() {
        assertInstanceOf(
                Outcome.NotEvaluated.class,
                outcome(new LimitedQuantity.Drawdown(5), new Comparison.WithoutHolder("x"), LimitPeriod.EVER, 0.01));
    }
}
