package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.headfall.solver.schedule.StepSchedule;
import org.junit.jupiter.api.Test;

/** The solutions take any consistent units; worked examples in feet stay in feet, with 1 gpm = 192.5 ft³/d. */
class TheisSolutionTest {
    private static final double GALLONS_PER_CUBIC_FOOT = 1728.0 / 231;
    private static final double SECONDS_PER_DAY = 86400;

    /** Shammas and Wang (2011), Fair, Geyer and Okun's Water and Wastewater Engineering, Example 3.2, Table 3.3. */
    @Test
    void reproducesShammasAndWangTable() {
        TheisSolution theis = new TheisSolution(3.2e4 / GALLONS_PER_CUBIC_FOOT, 3.4e-5);
        double[] days = {1 / 1440.0, 1 / 24.0, 8 / 24.0, 1, 30, 180};
        double[] exact = {30.549, 40.812, 46.025, 48.779, 57.304, 61.796};
        double[] printed = {30.6, 40.8, 46.0, 48.8, 57.3, 61.8};
        for (int i = 0; i < days.length; i++) {
            double drawdown = theis.drawdown(700 * 192.5, 1, days[i]);
            assertRelative(exact[i], drawdown, 1e-4, "day " + days[i]);
            assertRelative(printed[i], drawdown, 5e-3, "day " + days[i]);
        }
    }

    /** Shammas and Wang (2015), Water Engineering, Example 3.6: three bores on a line 1000 ft apart, printed to 0.5 %. */
    @Test
    void addsInterferingBoresAsShammasAndWangDo() {
        TheisSolution theis = new TheisSolution(3.2e4 / GALLONS_PER_CUBIC_FOOT, 3e-5);
        double rate = 700 * 192.5;
        var bores = List.of(new PumpedBore(0, 0, rate), new PumpedBore(1000, 0, rate), new PumpedBore(2000, 0, rate));
        double outer = theis.drawdown(bores, 0, 1, 10);
        double centre = theis.drawdown(bores, 1000, 1, 10);
        assertRelative(91.858, outer, 1e-4, "outer bore");
        assertRelative(95.332, centre, 1e-4, "centre bore");
        assertRelative(92, outer, 5e-3, "outer bore, printed");
        assertRelative(95.5, centre, 5e-3, "centre bore, printed");
    }

    /** Davis (2010), Water and Wastewater Engineering, Example 4-2. */
    @Test
    void reproducesDavisExample() {
        TheisSolution theis = new TheisSolution(2.63e-3 * SECONDS_PER_DAY, 2.74e-4);
        double drawdown = theis.drawdown(2.21e-2 * SECONDS_PER_DAY, 0.305, 100);
        assertRelative(14.322, drawdown, 1e-4, "recomputed");
        assertRelative(14.32, drawdown, 5e-3, "printed");
    }

    /**
     * Shammas and Wang (2015), Example 3.5: residual drawdown 24 h after the first of three pumping periods of two hours
     * began (t/t' = 1440/1320, 1200/1080, 960/780 minutes); printed 0.15 m. The late approximation is exact for small S.
     */
    @Test
    void recoversThroughInterruptedPumping() {
        double rate = 1907.5;
        double[] minutes = {0, 120, 240, 360, 480, 660};
        double[] days = new double[minutes.length];
        double[] rates = new double[minutes.length];
        for (int i = 0; i < minutes.length; i++) {
            days[i] = minutes[i] / 1440;
            rates[i] = i % 2 == 0 ? rate : 0;
        }
        double residual = new TheisSolution(397.38, 1e-9).drawdown(new StepSchedule(days, rates), 1, 1);
        assertRelative(0.1528, residual, 5e-4, "recomputed");
        assertEquals(0.15, residual, 0.005);
    }

    @Test
    void recoveryIsPumpingLessTheDelayedReturnOfTheSameRate() {
        TheisSolution theis = new TheisSolution(250, 2e-4);
        var pumpedForTwoDays = new StepSchedule(new double[] {3, 5}, new double[] {800, 0});
        double expected = theis.drawdown(800, 120, 4) - theis.drawdown(800, 120, 2);
        assertRelative(expected, theis.drawdown(pumpedForTwoDays, 120, 7), 1e-14, "two days after the stop");
        assertEquals(0, theis.drawdown(pumpedForTwoDays, 120, 3));
        assertEquals(0, theis.drawdown(pumpedForTwoDays, 120, -1));
    }

    /** Water taken from storage within a radius equals the water pumped: the integral of s S over the plane is Q t. */
    @Test
    void takesAllItsWaterFromStorage() {
        TheisSolution theis = new TheisSolution(250, 2e-4);
        double time = 3;
        double sum = 0;
        double step = 0.01;
        for (double logarithm = -10; logarithm < 14; logarithm += step) {
            double distance = Math.exp(logarithm);
            sum += theis.drawdown(800, distance, time) * 2 * Math.PI * distance * distance * step;
        }
        assertRelative(800 * time, sum * 2e-4, 1e-6, "volume");
    }

    @Test
    void namesTheArgumentItRefuses() {
        TheisSolution theis = new TheisSolution(250, 2e-4);
        assertRefused("transmissivity", "found -1", () -> new TheisSolution(-1, 2e-4));
        assertRefused("storativity", "found 0", () -> new TheisSolution(250, 0));
        assertRefused("distance", "found 0", () -> theis.drawdown(1, 0, 1));
        assertRefused("time", "found -2", () -> theis.drawdown(1, 1, -2));
        assertEquals(0, theis.drawdown(1, 1, 0));
    }

    private static void assertRefused(String name, String value, Runnable call) {
        String message = assertThrows(IllegalArgumentException.class, call::run).getMessage();
        assertTrue(message.contains(name) && message.contains(value), message);
    }
}
