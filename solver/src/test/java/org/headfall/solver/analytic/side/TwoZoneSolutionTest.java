package org.headfall.solver.analytic.side;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.headfall.solver.analytic.PumpedBore;
import org.headfall.solver.analytic.TheisSolution;
import org.junit.jupiter.api.Test;

class TwoZoneSolutionTest {
    private static final double LEFT = 40;
    private static final double RIGHT = 400;
    private static final TwoZoneSolution ZONES = new TwoZoneSolution(LEFT, RIGHT, 1e6);

    @Test
    void headAndFlowAreContinuousAtTheContact() {
        for (double boreX : new double[] {-150, 0, 220}) {
            PumpedBore bore = new PumpedBore(boreX, 50, 700.0);
            double onContact = ZONES.drawdown(bore, 0, 90, 0.4);
            assertRelative(onContact, ZONES.drawdown(bore, -1e-9, 90, 0.4), 1e-8, "head, bore at " + boreX);
            double flowLeft = -LEFT * slopeAwayFromContact(bore, -0.01);
            double flowRight = RIGHT * slopeAwayFromContact(bore, 0.01);
            assertEquals(flowLeft, flowRight, 1e-6, "flow (m²/d), bore at " + boreX);
        }
    }

    /** One-sided difference of second order along x, from the contact into the zone on the side of {@code h}. */
    private static double slopeAwayFromContact(PumpedBore bore, double h) {
        double near = ZONES.drawdown(bore, h, 90, 0.4);
        double far = ZONES.drawdown(bore, 2 * h, 90, 0.4);
        double contact = ZONES.drawdown(bore, Math.copySign(1e-12, h), 90, 0.4);
        return (4 * near - far - 3 * contact) / (2 * Math.abs(h));
    }

    @Test
    void isTheisWithoutContrastAndASideWithExtremeContrast() {
        PumpedBore bore = new PumpedBore(220, 50, 700.0);
        TheisSolution theis = new TheisSolution(RIGHT, RIGHT / 1e6);
        var even = new TwoZoneSolution(RIGHT, RIGHT, 1e6);
        assertRelative(theis.drawdown(bore, -30, 10, 1), even.drawdown(bore, -30, 10, 1), 1e-13, "even, beyond");
        assertRelative(theis.drawdown(bore, 30, 10, 1), even.drawdown(bore, 30, 10, 1), 1e-13, "even, own zone");
        var sealed = new TwoZoneSolution(1e-9, RIGHT, 1e6);
        var noFlow = new HalfPlaneSolution(theis, SideCondition.NO_FLOW);
        assertRelative(noFlow.drawdown(bore, 30, 10, 1), sealed.drawdown(bore, 30, 10, 1), 1e-10, "sealed");
        var open = new TwoZoneSolution(1e14, RIGHT, 1e6);
        var fixedHead = new HalfPlaneSolution(theis, SideCondition.FIXED_HEAD);
        assertRelative(fixedHead.drawdown(bore, 30, 10, 1), open.drawdown(bore, 30, 10, 1), 1e-9, "open");
    }

    @Test
    void refusesPropertiesThatAreNotPositive() {
        assertThrows(IllegalArgumentException.class, () -> new TwoZoneSolution(0, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> new TwoZoneSolution(1, 1, Double.NaN));
    }
}
