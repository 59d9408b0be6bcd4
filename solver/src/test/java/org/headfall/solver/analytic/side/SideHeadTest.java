package org.headfall.solver.analytic.side;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.headfall.solver.schedule.StepSchedule;
import org.junit.jupiter.api.Test;

/** A sudden and a periodic head at a straight side (Ferris 1951). */
class SideHeadTest {
    private static final double T = 120;
    private static final double S = 4e-4;

    @Test
    void stepSpreadsByDiffusion() {
        var side = new SteppedSideHead(T, S);
        assertEquals(2, side.headChange(2, 0, 1));
        // erfc(1/2) = 0.4795001222, Abramowitz and Stegun (1964), Table 7.1 (from memory, and recomputed)
        assertRelative(2 * 0.4795001222, side.headChange(2, Math.sqrt(T / S), 1), 1e-9, "at the diffusion length");
        double x = 300;
        double h = 0.5;
        double k = 1e-4;
        double rise = (side.headChange(2, x, 1 + k) - side.headChange(2, x, 1 - k)) / (2 * k);
        double bend = side.headChange(2, x + h, 1) - 2 * side.headChange(2, x, 1) + side.headChange(2, x - h, 1);
        assertRelative(S * rise, T * bend / (h * h), 1e-4, "balance");
    }

    @Test
    void inflowIsTheSlopeAtTheSide() {
        var side = new SteppedSideHead(T, S);
        double h = 1e-3;
        double slope = (side.headChange(2, 0, 3) - side.headChange(2, h, 3)) / h;
        assertRelative(T * slope, side.inflow(2, 3), 1e-6, "inflow");
    }

    /** A long row of steps that follows the sine ends in the periodic state. */
    @Test
    void stepsOfASineBecomeTheWaveOfFerris() {
        double period = 2;
        var wave = new PeriodicSideHead(T, S, period);
        int stepsPerPeriod = 200;
        int steps = 40 * stepsPerPeriod;
        double[] days = new double[steps];
        double[] heads = new double[steps];
        for (int i = 0; i < steps; i++) {
            days[i] = (i - 0.5) * period / stepsPerPeriod;
            heads[i] = 1.5 * Math.sin(2 * Math.PI * i / stepsPerPeriod);
        }
        var schedule = new StepSchedule(days, heads);
        double distance = 400;
        for (double share = 0; share < 1; share += 0.13) {
            double time = (39 + share) * period;
            double expected = wave.headChange(1.5, distance, time);
            assertEquals(expected, new SteppedSideHead(T, S).headChange(schedule, distance, time), 2e-3, "t = " + time);
        }
    }

    @Test
    void waveWeakensAndLags() {
        var wave = new PeriodicSideHead(T, S, 0.5);
        double distance = Math.sqrt(0.5 * T / (Math.PI * S));
        assertRelative(Math.exp(-1), wave.amplitudeRatio(distance), 1e-13, "amplitude");
        assertRelative(0.5 / (2 * Math.PI), wave.lag(distance), 1e-13, "lag of one radian");
        assertRelative(distance * Math.sqrt(0.5 * S / (4 * Math.PI * T)), wave.lag(distance), 1e-13, "lag");
        double crest = 0.125 + wave.lag(distance);
        assertRelative(3 * Math.exp(-1), wave.headChange(3, distance, crest), 1e-13, "crest");
    }

    @Test
    void refusesArgumentsOutsideTheirRange() {
        assertThrows(IllegalArgumentException.class, () -> new PeriodicSideHead(T, S, 0));
        assertThrows(IllegalArgumentException.class, () -> new SteppedSideHead(T, S).headChange(1, -1, 1));
        assertThrows(IllegalArgumentException.class, () -> new SteppedSideHead(T, S).inflow(1, 0));
    }
}
