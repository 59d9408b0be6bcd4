package org.headfall.solver.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.api.Test;

/** Chords of rules by hand: a bore that flows freely with a loss of 1e-6 Q², a pumped bore, a spring of 40 m²/d. */
class PointRulesTest {

    private static final int FLOWING = 0;
    private static final int PUMPED = 1;
    private static final int SPRING = 2;

    private static PointRules rules() {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, 100, 3), Axis.uniform(0, 100, 3));
        double[] ones = new double[9];
        Arrays.fill(ones, 1);
        boolean[] active = new boolean[9];
        Arrays.fill(active, true);
        double[] bottom = new double[9];
        Arrays.fill(bottom, -50);
        Aquifer aquifer = new Aquifer(grid, ones, ones, ones, new double[9], bottom, active);
        WellLoss loss = new WellLoss(0, 1e-6);
        Operation pumping = new Operation.PumpedRate(Schedule.constant(500), OptionalDouble.empty());
        return new PointRules(new FlowProblem(
                aquifer,
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(new Spring("spring", 250, 50, 80, 40)),
                List.of(
                        new Bore(
                                "flowing",
                                50,
                                50,
                                0.1,
                                loss,
                                List.of(new OperatingPhase(0, new Operation.FreeFlow(100)))),
                        new Bore("pumped", 150, 50, 0.1, loss, List.of(new OperatingPhase(0, pumping))))));
    }

    /** 1,000 m³/d take 1 m; with 0.75 m less 0.25 m are left, which give 500 m³/d: 0.75 m over 500 m³/d. */
    @Test
    void aLossThatBendsIsLessSteepTheFartherHeadFalls() {
        assertEquals(0.75 / 500, rules().chordOver(0, FLOWING, 1000, 0.75), 1e-9);
        assertEquals(2e-3, rules().chordOver(0, FLOWING, 1000, 1e-5), 1e-12);
        assertEquals(2e-3, rules().chordOver(0, FLOWING, 1000, 1e-2), 1e-5);
    }

    /** 160 m³/d need 4 m. A fall of 2 m takes half of them, one of 4 m all, and one of 8 m no more than that. */
    @Test
    void aSpringIsStraightUntilItStops() {
        assertEquals(1 / 40.0, rules().chordOver(0, SPRING, 160, 2), 1e-9);
        assertEquals(1 / 40.0, rules().chordOver(0, SPRING, 160, 4), 1e-9);
        assertEquals(8 / 160.0, rules().chordOver(0, SPRING, 160, 8), 1e-9);
        assertEquals(3 / 1000.0, rules().chordOver(0, FLOWING, 1000, 3), 1e-9);
    }

    @Test
    void aGivenRateHasNoChord() {
        assertEquals(Double.NaN, rules().chordOver(0, PUMPED, 500, 1));
    }
}
