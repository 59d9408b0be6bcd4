package org.headfall.solver.analytic.side;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.headfall.solver.analytic.function.ReferenceTable.assertRounds;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.headfall.solver.analytic.PumpedBore;
import org.headfall.solver.analytic.TheisSolution;
import org.headfall.solver.analytic.function.ReferenceTable;
import org.headfall.solver.schedule.StepSchedule;
import org.junit.jupiter.api.Test;

class StreamDepletionTest {
    private static final StreamDepletion DEPLETION = new StreamDepletion(250, 2e-4, 600);

    /** Jenkins (1968), Table 1, recomputed to eight digits. */
    @Test
    void agreesWithEveryRowOfJenkins() {
        for (var row : ReferenceTable.read("stream_depletion.csv", 51).rows()) {
            double time = row.number("t_over_F") * DEPLETION.depletionFactor();
            assertRounds(row.text("q_over_Q"), DEPLETION.rateShare(time), row);
            assertRounds(row.text("v_over_Qt"), DEPLETION.volumeShare(time), row);
        }
    }

    @Test
    void goesOnAfterTheStopAndReturnsTheWholeVolumeInTheEnd() {
        var rates = new StepSchedule(new double[] {0, 3}, new double[] {900, 0});
        double expected = 900 * (DEPLETION.rateShare(5) - DEPLETION.rateShare(2));
        assertRelative(expected, DEPLETION.rate(rates, 5), 1e-14, "rate two days after the stop");
        assertRelative(900 * 3, DEPLETION.volume(rates, 1e7), 1e-3, "volume in the end");
        double h = 1e-3;
        double growth = (DEPLETION.volume(rates, 5 + h) - DEPLETION.volume(rates, 5 - h)) / (2 * h);
        assertRelative(DEPLETION.rate(rates, 5), growth, 1e-6, "rate is the growth of volume");
    }

    /** The flow through the side of the image solution, integrated along the side. */
    @Test
    void isTheFlowThroughTheSideOfTheImageSolution() {
        double time = 0.7;
        var field = new HalfPlaneSolution(new TheisSolution(250, 2e-4), SideCondition.FIXED_HEAD);
        var bore = new PumpedBore(600, 0, 900.0);
        double h = 0.01;
        double step = 20;
        double sum = 0;
        for (double y = -20000; y <= 20000; y += step) {
            sum += 250 * field.drawdown(bore, h, y, time) / h * step;
        }
        assertRelative(900 * DEPLETION.rateShare(time), sum, 1e-6, "flow through the side");
    }

    @Test
    void nothingIsTakenBeforePumping() {
        assertEquals(0, DEPLETION.rateShare(0));
        assertEquals(0, DEPLETION.volumeShare(0));
        assertThrows(IllegalArgumentException.class, () -> DEPLETION.rateShare(-1));
        assertThrows(IllegalArgumentException.class, () -> new StreamDepletion(1, 1, 0));
    }
}
