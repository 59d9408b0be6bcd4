package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.headfall.solver.allocation.Programme;
import org.headfall.solver.bore.WellLoss;
import org.junit.jupiter.api.Test;

/** By hand: one bore alone, whose energy is its rate times the lift by its own drawdown and loss. */
class LiftedWaterTest {

    private static final double MOST = 5000;

    /**
     * Water stands above the delivery level by less than rounding of the lift at most rates: the programme around a rate then has the
     * value and slope of the energy, {@code (r + b) q²} for a response r and a loss b per unit, all the same.
     */
    @Test
    void waterMayStandJustAtItsDeliveryLevel() {
        double response = 0.0123;
        double linear = 0.0071;
        for (int i = 1; i < 2000; i++) {
            LiftedWater water = new LiftedWater(1);
            water.add(new LiftedWater.Term(0, 1, -1e-17 * i, new double[] {response}, new WellLoss(linear, 0)));
            double rate = 1.7 * i;
            Programme around = water.around(new double[] {MOST}, new double[] {rate});
            double energy = (response + linear) * rate * rate;
            double[] more = {rate * 1.001};
            double[] less = {rate * 0.999};
            assertEquals(energy, around.valueOf(new double[] {rate}), 2e-3 * rate + 1e-9 * energy);
            assertEquals(4e-3 * energy, around.valueOf(more) - around.valueOf(less), 1e-5 * rate + 1e-8 * energy);
        }
    }
}
