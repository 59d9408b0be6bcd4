package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.headfall.solver.schedule.StepSchedule;
import org.junit.jupiter.api.Test;

/** The bore itself: casing storage (Papadopulos and Cooper 1967) and free flow (Jacob and Lohman 1952, Hantush 1959). */
class BoreSolutionsTest {
    private static final double T = 150;
    private static final double S = 2e-4;

    @Test
    void casingEmptiesFirstAndThenTheAquiferGives() {
        var bore = new LargeDiameterBoreSolution(T, S, 0.1, 0.15);
        double casingArea = Math.PI * 0.15 * 0.15;
        double early = 1e-10;
        assertRelative(600 * early / casingArea, bore.drawdown(600, early), 1e-3, "early");
        double late = 250 * 0.15 * 0.15 / T;
        double shortfall = 1 - bore.drawdown(600, late) / new TheisSolution(T, S).drawdown(600, 0.1, late);
        assertEquals(0.0020, shortfall, 1e-4, "the 0.2 percent of the rule t > 250 r_c²/T");
        assertEquals(0, bore.drawdown(600, 0));
    }

    @Test
    void casingRefillsAfterTheStop() {
        var bore = new LargeDiameterBoreSolution(T, S, 0.1, 0.15);
        var rates = new StepSchedule(new double[] {0, 0.5}, new double[] {600, 0});
        double expected = bore.drawdown(600, 0.7) - bore.drawdown(600, 0.7 - 0.5);
        assertRelative(expected, bore.drawdown(rates, 0.7), 1e-13, "recovery");
    }

    /**
     * A bore pumped with the declining rate of a free-flowing one has that one's constant drawdown: Duhamel's integral of
     * the discharge with the drawdown of a casing without water, at the bore.
     */
    @Test
    void freeFlowKeepsTheDrawdownConstant() {
        var flowing = new FreeFlowingBoreSolution(T, S, 0.1);
        int steps = 4000;
        double[] days = new double[steps];
        double[] rates = new double[steps];
        double growth = Math.pow(1e11, 1.0 / steps);
        for (int i = 0; i < steps; i++) {
            days[i] = i == 0 ? 0 : 1e-9 * Math.pow(growth, i);
            double end = 1e-9 * Math.pow(growth, i + 1);
            rates[i] = flowing.discharge(12, Math.sqrt(Math.max(days[i], 1e-10) * end));
        }
        double drawdown = new TheisSolution(T, S).drawdown(new StepSchedule(days, rates), 0.1, 50);
        assertRelative(12, drawdown, 2e-3, "drawdown of the step history");
    }

    @Test
    void leakageFadesInAndBecomesSteady() {
        var confined = new FreeFlowingBoreSolution(T, S, 0.1);
        var leaky = new LeakyFreeFlowingBoreSolution(T, S, 3000, 0.1);
        for (double time = 1e-6; time < 0.05; time *= 3) {
            assertRelative(
                    confined.discharge(12, time), leaky.discharge(12, time), 0.3 * time / (S * 3000), "t = " + time);
        }
        assertRelative(leaky.steadyDischarge(12), leaky.discharge(12, 1e3), 1e-9, "late");
        double factor = Math.sqrt(T * 3000);
        double simple = 2 * Math.PI * T * 12 / Math.log(1.123 * factor / 0.1);
        assertRelative(simple, leaky.steadyDischarge(12), 1e-4, "short form with 1.123 B");
    }

    @Test
    void aFreeFlowingBoreTakesNoWaterIn() {
        var flowing = new FreeFlowingBoreSolution(T, S, 0.1);
        assertEquals(0, flowing.discharge(0, 1));
        assertThrows(IllegalArgumentException.class, () -> flowing.discharge(-1, 1));
        assertThrows(IllegalArgumentException.class, () -> flowing.discharge(1, 0));
        assertThrows(IllegalArgumentException.class, () -> new LeakyFreeFlowingBoreSolution(T, S, 0, 0.1));
        assertThrows(IllegalArgumentException.class, () -> new LargeDiameterBoreSolution(T, S, 0.1, 0));
    }
}
