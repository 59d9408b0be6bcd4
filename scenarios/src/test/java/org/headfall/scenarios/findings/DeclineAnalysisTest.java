package org.headfall.scenarios.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.junit.jupiter.api.Test;

/**
 * Head in closed form: drawdown after Cooper and Jacob (1946), {@code s = a ln(t / t0)}, with a seasonal wave on top of
 * it that slopes between the same days of the year must not see.
 */
class DeclineAnalysisTest {

    private static final double A = 2.5;
    private static final double T0 = 0.5;
    private static final double START = 120;
    private static final double OUTLET = 99;

    private final List<Station> stations =
            List.of(SmallField.bore("bore", 1500, 1500, OptionalDouble.of(OUTLET), OptionalDouble.of(-20), true));
    private final RunDescription description = SmallField.description(stations);

    private static double drawdown(double day) {
        return day <= T0 ? 0 : A * Math.log(day / T0);
    }

    private Decline atTheEnd(double wave) {
        double[] days = DoubleStream.iterate(0, day -> day <= description.endDay(), day -> day + 1)
                .toArray();
        double[] head = Arrays.stream(days)
                .map(day -> START - drawdown(day) - wave * Math.sin(2 * Math.PI * yearsOf(day)))
                .toArray();
        StationSeries series = new StationSeries(days, head, head, head, head);
        Recording recording = new Recording(days, List.of(series), List.of(), List.of(), new double[0]);
        List<Decline> declines = new DeclineAnalysis(description, recording).ofAllStations();
        assertTrue(declines.get(0).slope().isEmpty(), "no slope over five years after one year");
        return declines.get(1);
    }

    /** Years since the start by the calendar, so that the wave has the same phase on the same day of every year. */
    private double yearsOf(double day) {
        RunCalendar calendar = description.calendar();
        int year = 0;
        while (calendar.yearsAfter(0, year + 1) <= day) {
            year++;
        }
        double first = calendar.yearsAfter(0, year);
        return year + (day - first) / (calendar.yearsAfter(0, year + 1) - first);
    }

    @Test
    void theSlopeIsThatOfTheClosedFormWhateverTheSeason() {
        double end = description.endDay();
        double earlier = description.calendar().yearsAfter(end, -5);
        double expected = (drawdown(end) - drawdown(earlier)) / ((end - earlier) / 365.25);
        for (double wave : new double[] {0, 1.5}) {
            Decline decline = atTheEnd(wave);
            assertEquals(expected, decline.slope().getAsDouble(), 1e-9);
            double top = decline.aquiferTop().level().getAsDouble();
            assertEquals(
                    (decline.head() - top) / expected,
                    decline.aquiferTop().yearsLeft().getAsDouble(),
                    1e-6);
            assertEquals(
                    (decline.head() - top) / (START - top),
                    decline.availableLeft().getAsDouble(),
                    1e-12);
        }
    }

    /** A millimetre a year, 20 m above the outlet: that would take 20,000 years. */
    @Test
    void aDeclineThatTakesTooLongIsToldFromNone() {
        double[] days = {0, description.endDay()};
        double fall = 1e-3 * description.endDay() / 365.25;
        assertEquals(
                Decline.Left.LATER,
                overall(days, new double[] {START, START - fall}).outlet().left());
        Decline rising = overall(days, new double[] {START, START + fall});
        assertEquals(Decline.Left.NOT_FALLING, rising.outlet().left());
        assertTrue(rising.outlet().yearsLeft().isEmpty());
        assertEquals(Decline.Left.YEARS, atTheEnd(0).aquiferTop().left());
    }

    /** More loss in the bore brings the water to the intake while head rises. */
    @Test
    void theIntakeGoesByTheLevelInTheBore() {
        double[] days = {0, description.endDay()};
        Decline decline = overall(days, new double[] {START, START + 1}, new double[] {START, 0});
        assertEquals(Decline.Left.NOT_FALLING, decline.outlet().left());
        assertEquals(Decline.Left.YEARS, decline.intake().left());
        double perYear = START / (description.endDay() / 365.25);
        assertEquals(20 / perYear, decline.intake().yearsLeft().getAsDouble(), 0.01);
    }

    private Decline overall(double[] days, double[] head) {
        return overall(days, head, head);
    }

    private Decline overall(double[] days, double[] head, double[] level) {
        StationSeries series = new StationSeries(days, head, level, head, head);
        Recording recording = new Recording(days, List.of(series), List.of(), List.of(), new double[0]);
        return new DeclineAnalysis(description, recording).ofAllStations().get(1);
    }

    @Test
    void theOutletIsReachedOnTheDayOfTheClosedForm() {
        Decline decline = atTheEnd(0);
        double expected = T0 * Math.exp((START - OUTLET) / A);
        assertEquals(expected, decline.outlet().reachedDay().getAsDouble(), 0.01);
        assertTrue(decline.outlet().yearsLeft().isEmpty(), "no time left for what has been reached");
        assertEquals(Decline.Left.PASSED, decline.outlet().left());
        assertTrue(decline.intake().reachedDay().isEmpty(), "the intake stays under water");
    }
}
