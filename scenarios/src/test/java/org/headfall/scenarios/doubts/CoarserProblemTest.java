package org.headfall.scenarios.doubts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import java.util.function.IntToDoubleFunction;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.api.Test;

/** What must stay when cells are merged, on an uneven grid of odd size with random properties and holes. */
class CoarserProblemTest {

    private static final RectilinearGrid GRID = new RectilinearGrid(
            Axis.ofEdges(0, 10, 30, 60, 100, 150, 210, 280), Axis.ofEdges(0, 40, 50, 120, 130, 200));

    private final Random random = new Random(42);

    private double[] values(double least, double most) {
        return random.doubles(GRID.cellCount(), least, most).toArray();
    }

    private FlowProblem problem(List<OuterBoundary> boundaries) {
        boolean[] active = new boolean[GRID.cellCount()];
        for (int cell = 0; cell < active.length; cell++) {
            active[cell] = random.nextInt(3) > 0;
        }
        Aquifer aquifer = new Aquifer(
                GRID, values(1, 9), values(1, 9), values(1e-5, 1e-3), values(-50, -40), values(-90, -80), active);
        SealingBed bed = new SealingBed(values(10, 90), values(0, 1e-4), values(1e-6, 1e-5), values(90, 120));
        Recharge recharge = new Recharge("rain", values(0, 1e-3), Schedule.constant(1));
        return new FlowProblem(aquifer, Optional.of(bed), boundaries, List.of(recharge), List.of(), List.of());
    }

    private static double sum(Aquifer aquifer, IntToDoubleFunction perArea) {
        double sum = 0;
        for (int cell = 0; cell < aquifer.active().length; cell++) {
            sum += aquifer.active()[cell] ? aquifer.grid().area(cell) * perArea.applyAsDouble(cell) : 0;
        }
        return sum;
    }

    private static void same(FlowProblem fine, FlowProblem coarse, Function<FlowProblem, IntToDoubleFunction> of) {
        double expected = sum(fine.aquifer(), of.apply(fine));
        assertEquals(expected, sum(coarse.aquifer(), of.apply(coarse)), 1e-12 * expected);
    }

    @Test
    void keepsTheSumsOfStorageLeakageAndRecharge() {
        FlowProblem fine = problem(List.of());
        FlowProblem coarse = CoarserProblem.of(fine).problem();
        assertEquals(4, coarse.aquifer().grid().columns());
        assertEquals(3, coarse.aquifer().grid().rows());
        same(fine, coarse, problem -> cell -> problem.aquifer().storativity()[cell]);
        same(fine, coarse, problem -> cell -> problem.recharges().get(0).rate()[cell]);
        same(fine, coarse, problem -> problem.sealingBed().orElseThrow()::leakance);
        same(fine, coarse, problem -> cell -> {
            SealingBed bed = problem.sealingBed().orElseThrow();
            return bed.leakance(cell) * bed.headAbove()[cell];
        });
        same(fine, coarse, problem -> cell -> {
            SealingBed bed = problem.sealingBed().orElseThrow();
            return bed.specificStorage()[cell] * bed.thickness()[cell];
        });
    }

    @Test
    void aMergedCellBelongsToTheAquiferIfAPartDoes() {
        FlowProblem fine = problem(List.of());
        Aquifer coarse = CoarserProblem.of(fine).problem().aquifer();
        for (int cell = 0; cell < GRID.cellCount(); cell++) {
            int merged = coarse.grid().locate(GRID.centreX(cell), GRID.centreY(cell));
            assertTrue(coarse.active()[merged] || !fine.aquifer().active()[cell], "cell " + cell);
        }
    }

    @Test
    void neighbouringBoundariesDoNotOverlap() {
        FlowProblem coarse = CoarserProblem.of(problem(List.of(north("a", 0, 2), north("b", 3, 6))))
                .problem();
        assertEquals(
                new SideSegment(Side.NORTH, 0, 1), coarse.boundaries().get(0).segment());
        assertEquals(
                new SideSegment(Side.NORTH, 2, 3), coarse.boundaries().get(1).segment());
    }

    @Test
    void refusesABoundaryThatWouldVanish() {
        FlowProblem fine = problem(List.of(north("gap in the hills", 3, 3)));
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, () -> CoarserProblem.of(fine));
        assertTrue(String.valueOf(refused.getMessage()).contains("gap in the hills"), refused::getMessage);
    }

    private static OuterBoundary north(String name, int first, int last) {
        return new OuterBoundary.FixedHead(name, new SideSegment(Side.NORTH, first, last), Schedule.constant(100));
    }
}
