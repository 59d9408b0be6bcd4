package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.api.Test;

/** Distances from which on sides do no harm: the validation case side-close, against image wells. */
class BoresBesideSidesTest {

    private static final RectilinearGrid GRID = new RectilinearGrid(Axis.uniform(0, 100, 10), Axis.uniform(0, 100, 8));

    private static List<String> sentences(double x, double y, boolean[] active) {
        Aquifer plain = Aquifer.homogeneous(GRID, 100, 1e-4);
        Aquifer aquifer = new Aquifer(
                GRID,
                plain.transmissivityX(),
                plain.transmissivityY(),
                plain.storativity(),
                plain.top(),
                plain.bottom(),
                active);
        FlowProblem problem = new FlowProblem(
                aquifer,
                Optional.empty(),
                List.of(new OuterBoundary.FixedHead("sea", new SideSegment(Side.EAST, 2, 6), Schedule.constant(0))),
                List.of(),
                List.of(),
                List.of(new Bore("Mulga", x, y, 0.1, WellLoss.NONE, List.of())));
        return BoresBesideSides.sentences(problem);
    }

    private static boolean[] all() {
        boolean[] active = new boolean[GRID.cellCount()];
        Arrays.fill(active, true);
        return active;
    }

    @Test
    void boresAtStraightSidesAreNotNamed() {
        assertEquals(List.of(), sentences(450, 450, all()));
        assertEquals(List.of(), sentences(20, 450, all()));
        assertEquals(List.of(), sentences(20, 790, all()));
        assertEquals(List.of(), sentences(940, 450, all()));
    }

    @Test
    void boresTooCloseToWhereASideChangesAreNamed() {
        List<String> closed = sentences(980, 150, all());
        assertEquals(1, closed.size());
        assertTrue(closed.get(0).startsWith("Mulga stands 20.0 m from the east edge"), closed.get(0));
        assertEquals(List.of(), sentences(940, 150, all()));
        assertTrue(sentences(940, 250, all()).get(0).contains("head is fixed"));
        assertEquals(List.of(), sentences(890, 250, all()));
    }

    /** Nearer than some 5 % of a cell the grid carries more than all of the drawdown at a side of fixed head. */
    @Test
    void aBoreRightAtASideOfFixedHeadIsNamed() {
        assertTrue(sentences(998, 450, all()).get(0).contains("head is fixed"));
    }

    @Test
    void edgesInsideTheGridCountToo() {
        boolean[] active = all();
        active[GRID.cell(4, 4)] = false;
        assertEquals(1, sentences(399, 450, active).size());
        assertEquals(List.of(), sentences(340, 450, active));
        for (int row = 0; row < 8; row++) {
            active[GRID.cell(4, row)] = false;
        }
        assertEquals(List.of(), sentences(399, 450, active));
    }
}
