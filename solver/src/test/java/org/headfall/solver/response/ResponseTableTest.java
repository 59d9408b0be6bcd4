package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.headfall.solver.analytic.function.WellFunction;
import org.junit.jupiter.api.Test;

/** Curves of Theis (1935) at 500 m from a bore: T = 100 m²/d, S = 1e-4, whose values and rates are known. */
class ResponseTableTest {

    private static final double T = 100;
    private static final double TIME_SCALE = 500.0 * 500.0 * 1e-4 / (4 * T);

    private static double theis(double time) {
        return WellFunction.of(TIME_SCALE / time) / (4 * Math.PI * T);
    }

    /** One cause, two receptors: the second feels half, and has a loss of its own that comes at once. */
    private static ResponseTable table() {
        double[] times = new double[60];
        Arrays.setAll(times, i -> 1e-3 * Math.pow(10, i / 8.0));
        double[][] values = new double[times.length][2];
        double[][] rates = new double[times.length][2];
        for (int i = 0; i < times.length; i++) {
            double rate = Math.exp(-TIME_SCALE / times[i]) / times[i] / (4 * Math.PI * T);
            values[i] = new double[] {theis(times[i]), 0.5 * theis(times[i]) + 1e-3};
            rates[i] = new double[] {rate, 0.5 * rate};
        }
        return new ResponseTable(2, times, new double[] {0, 1e-3}, values, rates);
    }

    /** Within 0.1 mm for a litre a second (86.4 m³/d). */
    @Test
    void followsTheCurveBetweenItsTimes() {
        ResponseTable table = table();
        for (double time = 2e-3; time < 20_000; time *= 1.07) {
            assertEquals(theis(time), table.at(0, 0, time), 1e-4 / 86.4, "time " + time);
            double[] drawdown = new double[2];
            table.addSteps(time, new double[] {86.4}, drawdown);
            assertEquals(86.4 * table.at(1, 0, time), drawdown[1], 1e-12);
        }
    }

    /** At the second receptor half of Theis, and its own loss, are less than Theis at the first. */
    @Test
    void largestEffectIsThatAtTheReceptorThatFeelsMost() {
        ResponseTable table = table();
        double[] effects = table.largestEffects();
        assertEquals(1, effects.length);
        assertEquals(theis(table.lastTime()), effects[0], 1e-12);
    }

    @Test
    void integratesTheCurve() {
        ResponseTable table = table();
        IterativeLegendreGaussIntegrator integrator = new IterativeLegendreGaussIntegrator(8, 1e-10, 1e-14);
        double sum = 0;
        double before = 1e-9;
        for (double time = 5e-4; time < 20_000; time *= 1.31) {
            sum += integrator.integrate(100_000, t -> table.at(1, 0, t), before, time);
            before = time;
            double[] drawdown = new double[1];
            table.addRamps(time, new double[] {1}, new int[] {1}, drawdown);
            assertEquals(sum, drawdown[0], 1e-6 * sum + 1e-11, "time " + time);
        }
    }

    @Test
    void knowsNothingBeyondItsLastTime() {
        assertEquals(0, table().at(0, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> table().at(0, 0, 1e6));
    }
}
