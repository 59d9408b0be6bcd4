package org.headfall.solver.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.headfall.solver.analytic.FreeFlowingBoreSolution;
import org.headfall.solver.analytic.function.ModifiedBessel;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.api.Test;

/** Bores off the centres of wide cells against steady closed forms and against free flow. */
class BoreSolutionsOnTheGridTest {

    private static final double T = 200;
    private static final double S = 1e-4;
    private static final double RATE = 2000;
    private static final double RADIUS = 0.1;

    private static Bore shut(String name, double x, double y) {
        return new Bore(name, x, y, RADIUS, WellLoss.NONE, List.of());
    }

    /** Thiem 1906: difference of steady head between the bore and observation bores, 0.5 %. */
    @Test
    void steadyHeadAtTheBoreAndAroundItIsThatOfThiem() {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(-50_250, 500, 201), Axis.uniform(-50_250, 500, 201));
        Bore pumped = Fields.pumped("pumped", 130, -70, RADIUS, Schedule.constant(RATE));
        Bore[] bores = {pumped, shut("30 m off", 148, -46), shut("next cell", 330, -70), shut("two km off", 1730, 1130)
        };
        FlowProblem problem = Fields.problem(Aquifer.homogeneous(grid, T, S), Fields.heldOnAllSides(grid, 100), bores);
        double[] head = new Simulation(problem, Settings.DEFAULT).steadyHead(1);
        double[] wall = new double[bores.length];
        new Simulation(problem, Settings.DEFAULT)
                .run(head, 1, 2, new double[] {1}, state -> System.arraycopy(state.boreWallHead(), 0, wall, 0, 4));
        for (int i = 1; i < bores.length; i++) {
            double distance = Math.hypot(bores[i].x() - pumped.x(), bores[i].y() - pumped.y());
            double exact = RATE / (2 * Math.PI * T) * Math.log(distance / RADIUS);
            assertEquals(exact, wall[i] - wall[0], 0.005 * exact, bores[i].name());
        }
        double between = RATE / (2 * Math.PI * T) * Math.log(2000.0 / 30);
        assertEquals(between, wall[3] - wall[1], 0.005 * between);
    }

    /** De Glee 1930: {@code Q/(2 pi T) K0(r/B)} at the bore and at others, 0.5 %, B four cells. */
    @Test
    void steadyLeakyDrawdownAtBoresIsThatOfDeGlee() {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(-20_250, 500, 81), Axis.uniform(-20_250, 500, 81));
        double leakageFactor = 2000;
        SealingBed bed = new SealingBed(
                Fields.level(grid, 10),
                Fields.level(grid, T * 10 / (leakageFactor * leakageFactor)),
                Fields.level(grid, 0),
                Fields.level(grid, 50));
        Bore pumped = Fields.pumped("pumped", 130, -170, RADIUS, Schedule.constant(RATE));
        List<Bore> bores =
                List.of(pumped, shut("50 m off", 170, -140), shut("next cell", 330, -170), shut("a km off", 930, 430));
        FlowProblem problem = new FlowProblem(
                Aquifer.homogeneous(grid, T, S), Optional.of(bed), List.of(), List.of(), List.of(), bores);
        double[] head = new Simulation(problem, Settings.DEFAULT).steadyHead(1);
        new Simulation(problem, Settings.DEFAULT).run(head, 1, 2, new double[] {1}, state -> {
            for (int i = 0; i < bores.size(); i++) {
                Bore at = bores.get(i);
                double distance = Math.max(RADIUS, Math.hypot(at.x() - pumped.x(), at.y() - pumped.y()));
                double exact = RATE / (2 * Math.PI * T) * ModifiedBessel.k0(distance / leakageFactor);
                assertEquals(exact, 50 - state.boreWallHead()[i], 0.005 * exact, at.name());
            }
        });
    }

    /** Jacob and Lohman 1952: discharge of a free-flowing bore off the centre of its cell, five decades, 0.5 %. */
    @Test
    void aFreeFlowingBoreDischargesWhatJacobAndLohmanSay() {
        Axis axis = Fields.widening(20, 240, 150_000);
        RectilinearGrid grid = new RectilinearGrid(axis, axis);
        Bore bore = new Bore(
                "free", 6.5, -8.1, RADIUS, WellLoss.NONE, List.of(new OperatingPhase(0, new Operation.FreeFlow(90))));
        FlowProblem problem = Fields.problem(Aquifer.homogeneous(grid, T, S), Fields.heldOnAllSides(grid, 100), bore);
        double[] days = {0.005, 0.05, 0.5, 5, 50, 500};
        FreeFlowingBoreSolution exact = new FreeFlowingBoreSolution(T, S, RADIUS);
        new Simulation(problem, new Settings(1e-4, Double.POSITIVE_INFINITY, 1))
                .run(Fields.level(grid, 100), 0, 500, days, state -> {
                    double expected = exact.discharge(10, state.day());
                    assertEquals(expected, state.boreRate()[0], 0.005 * expected, "day " + state.day());
                    assertEquals(90, state.boreWallHead()[0], 1e-4);
                });
    }

    /** Against the same field on cells an eighth as wide, where T varies like a mapped one: 1 % at bores in one cell. */
    @Test
    void whereTVariesSmoothlyWideCellsAgreeWithNarrowOnes() {
        double[] wide = varyingWallHeads(1);
        double[] narrow = varyingWallHeads(8);
        for (int i = 0; i < wide.length; i++) {
            assertEquals(narrow[i], wide[i], 0.01 * (100 - narrow[i]), Arrays.toString(wide));
        }
    }

    private static double[] varyingWallHeads(int parts) {
        Axis axis = Axis.uniform(0, 500.0 / parts, 30 * parts);
        RectilinearGrid grid = new RectilinearGrid(axis, axis);
        Aquifer plain = Aquifer.homogeneous(grid, T, S);
        double[] t = new double[grid.cellCount()];
        for (int cell = 0; cell < t.length; cell++) {
            double x = 500 * Math.floor(grid.centreX(cell) / 500);
            double y = 500 * Math.floor(grid.centreY(cell) / 500);
            t[cell] = T * Math.exp(0.7 * Math.sin(x / 1500) * Math.cos(y / 1900));
        }
        Aquifer aquifer = new Aquifer(grid, t, t, plain.storativity(), plain.top(), plain.bottom(), plain.active());
        Random random = new Random(4);
        Bore[] bores = new Bore[6];
        for (int i = 0; i < bores.length; i++) {
            double x = 7000 + 500 * (Math.floorDiv(i, 2) + 0.1 + 0.8 * random.nextDouble());
            double y = 7500 + 500 * (0.1 + 0.8 * random.nextDouble());
            bores[i] = Fields.pumped("bore " + i, x, y, RADIUS, Schedule.constant(RATE));
        }
        FlowProblem problem = Fields.problem(aquifer, Fields.heldOnAllSides(grid, 100), bores);
        double[] head = new Simulation(problem, Settings.DEFAULT).steadyHead(1);
        double[] wall = new double[bores.length];
        new Simulation(problem, Settings.DEFAULT)
                .run(head, 1, 2, new double[] {1}, state -> System.arraycopy(state.boreWallHead(), 0, wall, 0, 6));
        return wall;
    }
}
